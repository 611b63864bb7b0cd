export * from './play.ts';
