export { pours } from './pours.ts';
export { setting } from './setting.ts';
