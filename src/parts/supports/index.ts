export { buildUp } from './build-up.ts';
export { nest } from './nest.ts';
