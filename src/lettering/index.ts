export * from './letters.ts';
