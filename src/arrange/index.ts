export { type Arranged, arrange } from './arrange.ts';
