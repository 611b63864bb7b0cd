export * from './bolts.ts';
export * from './cap-nuts.ts';
export * from './lid-metals.ts';
export * from './plastics.ts';
export * from './rubbers.ts';
export * from './source.ts';
export * from './stock.ts';
