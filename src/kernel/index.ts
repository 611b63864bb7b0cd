export * from './crossings.ts';
export { KernelFault } from './fault.ts';
export type { Body, Geom3, KernelOptions, Profile } from './kernel.ts';
export { Kernel, loadKernel, type Scope } from './kernel.ts';
export * from './matrix.ts';
export * from './rounding.ts';
export * from './segments.ts';
export type { Solid, SolidMeasures, SolidRole } from './solid.ts';
export * from './triangles.ts';
