export type { HalvesInput } from './cut-halves.ts';
export { discBlank } from './disc-blank.ts';
export { halfSolids, halves, halvesInput, subjectsOf } from './halves.ts';
export { patternPlate } from './pattern-plate.ts';
