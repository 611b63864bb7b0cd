export { boltCircle } from './bolt-circle.ts';
export { halfDensity } from './half-density.ts';
export { halfMaterialOf, heatOf, ownMaterial } from './materials.ts';
export { leftOut } from './not-given.ts';
export { floorOf, isUnder, type ProcessFloor } from './process-floor.ts';
export { everyProcess } from './processes.ts';
export { type Densities, fittings, imprintOf, metalAlone, metalInCavity } from './turning-masses.ts';
