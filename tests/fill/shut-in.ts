import type { Cells } from '../../src/fill/cells.ts';
import type { Port } from '../../src/fill/conditions.ts';
import { emptyRoom } from '../../src/fill/empty-room.ts';
import { airLeft, assumptions, fillRoom } from '../../src/fill/forecast.ts';
import { turning } from './shapes.ts';

export const usual = assumptions[0].lock;

/** Air shut in by the usual assumption, before it is pressed together, mm3. */
export const shutIn = (cells: Cells, ports: readonly Port[], conditions = turning): number =>
  airLeft(fillRoom(emptyRoom(cells, conditions), ports), usual).reduce((sum, one) => sum + one.shutIn, 0);
