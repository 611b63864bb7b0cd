export * from './crossings.ts';
export { KernelExhausted, KernelFault } from './fault.ts';
export type { Body, Geom3, Profile } from './kernel.ts';
export { Kernel, loadKernel, movedBySimplify, type Scope } from './kernel.ts';
export * from './rounding.ts';
