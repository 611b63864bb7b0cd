export type { Lettering } from './lettering.ts';
export * from './letters.ts';
export * from './size-text.ts';
