export * from './cap-nuts.ts';
export * from './source.ts';
export * from './stock.ts';
