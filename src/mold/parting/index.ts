export * from './find.ts';
export type { Pin } from './pins.ts';
export * from './prism.ts';
