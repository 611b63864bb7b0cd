export type { Arranged } from './arrange.ts';
export { type LaidOut, layOut } from './lay-out.ts';
