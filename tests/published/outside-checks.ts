import { canChecks } from './outside/can.ts';
import { fillChecks } from './outside/fill.ts';
import type { OutsideCheck } from './outside/outside-check.ts';
import { pouringChecks } from './outside/pouring.ts';
import { shapeChecks } from './outside/shape.ts';
import { turningChecks } from './outside/turning.ts';

export type { OutsideCheck } from './outside/outside-check.ts';

/**
 * Every figure of the catalogue with what its computation is held to; one row for each check, in `outside/`. `docs/sources.md` is
 * made from it. The tests fail where a figure has no row, or where the test a row names is not there or does not pass.
 */
export const outsideChecks: readonly OutsideCheck[] = [
  ...shapeChecks,
  ...canChecks,
  ...turningChecks,
  ...fillChecks,
  ...pouringChecks,
];
