export { filling } from './fill-check.ts';
