export { leftByCutter } from './left-by-cutter.ts';
