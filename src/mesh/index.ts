export * from './raw.ts';
