export { balance } from './balance.ts';
export { plates } from './plates.ts';
export { pressure } from './pressure.ts';
export { speedBand } from './speed-band.ts';
export { spin } from './spin.ts';
