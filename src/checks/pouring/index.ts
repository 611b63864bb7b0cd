export { cost } from './cost.ts';
export { order } from './order.ts';
export { pours } from './pours.ts';
export { setting } from './setting.ts';
