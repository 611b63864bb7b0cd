export { cureReached } from './cure.ts';
export { cureInhibition } from './cure-inhibition.ts';
export { heatOfCure } from './heat-cure.ts';
export { heatOfPour } from './heat-pour.ts';
export { superheat } from './superheat.ts';
