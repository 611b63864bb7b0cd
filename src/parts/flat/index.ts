export { canParts } from './can-parts.ts';
export { depthGauge } from './depth-gauge.ts';
export { knifeStencil } from './knife-stencil.ts';
export { layoutPlate } from './layout-plate.ts';
