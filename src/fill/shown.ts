import { movePoint, rotation, type Vec3 } from '../geometry/index.ts';
import type { Channel, Mold } from '../mold/index.ts';
import { cutCavity, portsOf } from './cavity.ts';
import { type Cells, middleOf, wall } from './cells.ts';
import type { Pocket, SealedBy } from './conditions.ts';
import { emptyRoom } from './empty-room.ts';
import { never } from './fill-order.ts';
import { type Forecast, type FoundAir, forecastRoom } from './forecast.ts';
import type { GateForecast } from './gate.ts';
import { cavityOf, conditionsOf, isParted, sweptIn } from './of-mold.ts';

/** Air that stays, to be shown. Volumes in mm3 after pressing together; places in the mold frame, mm. */
interface ShownAir {
  /** Where a vent belongs, or the mouth of the gate it stays under. */
  readonly place: Vec3;
  /** Least and most over the range of what is not known, and under the usual assumptions. */
  readonly volumes: readonly [number, number];
  readonly usual: number;
  /** Whether it stays under all, or some, of the range. */
  readonly stays: FoundAir['stays'];
  readonly where: Pocket['where'] | 'gate';
  readonly sealed: SealedBy;
  /** A vent at its place, or its gate opened to a width, mm. */
  readonly frees: { readonly by: 'vent' } | { readonly by: 'gate'; readonly width: number };
  /** Cells of its largest pocket in the order metal would fill them; none under a gate. */
  readonly cells: Int32Array;
}

/** A cavity filled, to be shown. */
interface ShownFilling {
  /** By cell: from 0, filled first, to 1, filled last; NaN where metal never comes. */
  readonly order: Float32Array;
  readonly fillS: number;
  /** The worst first. */
  readonly air: readonly ShownAir[];
}

/** A cavity in cells that is filled, and shown, through one set of gates and vents after another. */
export interface ShownCavity {
  /** Edge of a cell, mm. */
  readonly cell: number;
  /** x, y, z of the middle of each cell, in the mold frame, mm. */
  readonly middles: Float32Array;
  /** The cell nearest to each point (x, y, z in the mold frame), such as the vertices of its surface; -1 where none is near. */
  cellsAt(points: Float32Array | Float64Array): Int32Array;
  /** With these of its gates and vents, those of other placements left aside. Undefined where no gate opens into it. */
  fill(channels: readonly Channel[]): ShownFilling | undefined;
}

/** Coarse enough for a cavity to be filled again while a gate is dragged, mm. */
const whileDragged = 0.4;

/**
 * One cavity to be filled again and again while its gates and vents are changed: what they do not change is found once.
 * Undefined where the plan says too little to fill it, or there is no such placement.
 */
export function shownCavity(mold: Mold, id: string, cell = whileDragged): ShownCavity | undefined {
  const placement = mold.placements.find((one) => one.id === id);
  const known = conditionsOf(mold);
  if (!placement || !known || !isParted(mold, placement)) return undefined;
  const { problem, turnRad } = cavityOf(mold, placement, known);
  const { cells } = cutCavity({ ...problem, cell });
  const empty = emptyRoom(cells, problem.conditions);
  const there = rotation('z', turnRad);
  const toMold = (point: Vec3): Vec3 => movePoint(there, point);
  return {
    cell: cells.cell,
    middles: middlesOf(cells, toMold),
    cellsAt: (points) => nearestCells(cells, points, rotation('z', -turnRad)),
    fill: (channels) => {
      const own = channels.filter((one) => one.placement === id);
      const ports = portsOf(cells, sweptIn(mold, placement, own));
      return ports && shown(forecastRoom(empty, ports), toMold);
    },
  };
}

function middlesOf(cells: Cells, toMold: (point: Vec3) => Vec3): Float32Array {
  const middles = new Float32Array(3 * cells.count);
  for (let c = 0; c < cells.count; c++) middles.set(toMold(middleOf(cells, c)), 3 * c);
  return middles;
}

function shown({ filling, fillS, gates, places }: Forecast, toMold: (point: Vec3) => Vec3): ShownFilling {
  const last = Math.max(1, filling.sequence.length - 1);
  const order = Float32Array.from(filling.filled, (at) => (at === never ? Number.NaN : at / last));
  const air = [...places.map(shownAir), ...gates.flatMap(underGate)];
  const most = ({ volumes }: ShownAir): number => volumes[1];
  return {
    order,
    fillS,
    air: air
      .map((one) => ({ ...one, place: toMold(one.place) }))
      .sort((a, b) => Number(b.stays === 'all') - Number(a.stays === 'all') || most(b) - most(a)),
  };
}

const shownAir = ({ volumes, stays, pocket, cells }: FoundAir): ShownAir => ({
  place: pocket.place,
  volumes: [Math.min(...volumes), Math.max(...volumes)],
  usual: volumes[0],
  stays,
  where: pocket.where,
  sealed: pocket.sealedBy,
  frees: { by: 'vent' },
  cells: Int32Array.from(cells),
});

/** A band under a gate that shuts; only froth, which may still rise, where it does not. */
function underGate({ place, band: [least, most], opening, opensAt }: GateForecast): ShownAir[] {
  if (opening >= 1) return [];
  return [
    {
      place,
      volumes: [least, most],
      usual: least,
      stays: 'all',
      where: 'gate',
      sealed: 'gate',
      frees: { by: 'gate', width: opensAt },
      cells: new Int32Array(0),
    },
  ];
}

/** How far round a point cells are sought, in cells; and the steps to all of those, the nearest first. */
const reach = 4;
const stepsRound = Array.from({ length: (2 * reach + 1) ** 3 }, (_, n) => {
  const across = 2 * reach + 1;
  const step = [n % across, ((n / across) | 0) % across, (n / across ** 2) | 0].map((value) => value - reach);
  return { step, far: Math.hypot(...step) };
}).sort((a, b) => a.far - b.far);

function nearestCells(
  cells: Cells,
  points: Float32Array | Float64Array,
  back: ReturnType<typeof rotation>,
): Int32Array {
  const nearest = new Int32Array(points.length / 3);
  for (let p = 0; p < nearest.length; p++)
    nearest[p] = nearestCell(cells, movePoint(back, [points[3 * p], points[3 * p + 1], points[3 * p + 2]]));
  return nearest;
}

function nearestCell({ numbers, size, low, cell }: Cells, point: Vec3): number {
  const at = point.map((value, axis) => (value - low[axis]) / cell);
  const own = at.map(Math.round);
  // A point lies up to half a diagonal off the middle of its own place.
  const off = Math.hypot(...at.map((value, axis) => value - own[axis]));
  let [best, least] = [wall, Number.POSITIVE_INFINITY];
  for (const { step, far } of stepsRound) {
    if (far - off >= least) break;
    const [i, j, k] = own.map((value, axis) => value + step[axis]);
    if (i < 0 || j < 0 || k < 0 || i >= size[0] || j >= size[1] || k >= size[2]) continue;
    const n = numbers[(k * size[1] + j) * size[0] + i];
    if (n === wall) continue;
    const away = Math.hypot(i - at[0], j - at[1], k - at[2]);
    if (away < least) [best, least] = [n, away];
  }
  return best;
}
