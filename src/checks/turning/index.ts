export { balance } from './balance.ts';
export { pressure } from './pressure.ts';
export { spin } from './spin.ts';
