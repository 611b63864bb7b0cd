export * from './letters.ts';
export * from './size-text.ts';
