export * from './closing.ts';
export * from './cure.ts';
export * from './heating.ts';
export * from './plate.ts';
export * from './play.ts';
export * from './slab.ts';
export * from './threads.ts';
