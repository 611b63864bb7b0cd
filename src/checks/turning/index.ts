export { balance } from './balance.ts';
export { flash } from './flash.ts';
export { plates } from './plates.ts';
export { pressure } from './pressure.ts';
export { type ShotInput, shotInput } from './shot-input.ts';
export { speedBand } from './speed-band.ts';
export { spin } from './spin.ts';
export { squeeze } from './squeeze.ts';
export { metalInWell, metalOf, shotOf } from './turning-metal.ts';
