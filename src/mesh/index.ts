export * from './height-map.ts';
export * from './import.ts';
export * from './measure.ts';
export * from './raw.ts';
export type { Grid, GridWish } from './scan.ts';
export * from './silhouette.ts';
export * from './smallest-circle.ts';
export * from './widest-height.ts';
