import type { Vec3 } from '../geometry/index.ts';
import { bondNumber, floodingSpeed, halfWidthAt, outflowSpeed, sharpEdged } from '../physics/index.ts';
import { type Cells, middleOf } from './cells.ts';
import type { Conditions, Port } from './conditions.ts';
import { type LockRule, lockLimits } from './lock.ts';
import { omegaSquared, pullAt } from './potential.ts';

/** How a gate lets metal in and air out. Lengths in mm, volumes in mm3, speeds in m/s. */
export interface GateForecast {
  readonly id: string;
  readonly place: Vec3;
  /** Of the metal through the opening, and how much comes, mm3/s. */
  readonly speed: number;
  readonly flow: number;
  /** Flow over whole section against the speed that lets air up past it: above 1 no air comes out while metal runs in. */
  readonly flooding: number;
  /** Bond number of the opening over the limit of its edge: below 1 it stays shut to air once metal has backed up to it. */
  readonly opening: number;
  /** Width at which it would stay open to air, as deep as now for its width. */
  readonly opensAt: number;
  /** Air that stays under it: at least and at most. Both 0 where it stays open. */
  readonly band: readonly [number, number];
}

/** Share of sqrt(a D) at which a falling stream shuts its opening; 0.5 to 1 by the runs, the middle taken. */
const floodingShare = 0.75;

/**
 * How far air stays round a gate that has shut, in widths of its opening, from a plane run (18 % of a bar of 25 mm in one place
 * under a gate of 2.1 mm), at most half the cavity; and the share of the cavity that froth holds while metal runs in faster than air gets
 * out (one plane run, 40 %, still falling). Plane runs are pessimistic.
 */
const bandDeep: readonly [number, number] = [1, 2];
const frothShare = 0.4;

export function gateForecast(
  cells: Cells,
  port: Port,
  conditions: Conditions,
  rule: LockRule,
  reached: number,
): GateForecast {
  const { field, metal, wellLevel } = conditions;
  const { width, depth } = port;
  const place = middleOfAll(cells, port.cells);
  const pull = pullAt(field, place[0], place[1]);
  const { area, girth } = halfEllipse(width, depth);
  const diameter = (4 * area) / girth;
  const speed = outflowSpeed(Math.sqrt(omegaSquared(field)), Math.hypot(place[0], place[1]), wellLevel);
  const capacity = sharpEdged * speed * area * 1000;
  const flow = Math.min(conditions.flow ?? capacity, capacity);
  const flooding = flow / 1000 / area / floodingSpeed(floodingShare, pull, diameter);
  const [small, large] = [Math.min(width / 2, depth) / 2, Math.max(width / 2, depth / 2)];
  const { edge } = lockLimits(rule, Math.min(1, small / large));
  const opening = bondNumber(metal.densityKgM3, pull, large, metal.tensionNM) / edge;
  const shape = large / (width / 2);
  const opensAt = (2 * halfWidthAt(edge, metal.densityKgM3, pull, metal.tensionNM)) / shape;
  const band = bandUnder(cells, place, 2 * large, reached, flooding > 1, opening < 1);
  return { id: port.id, place, speed, flow, flooding, opening, opensAt, band };
}

/** A channel's section, round about: area pi w d / 4, mm2, and girth, mm. */
export const halfEllipse = (
  width: number,
  depth: number,
): { readonly area: number; readonly girth: number } => ({
  area: (Math.PI / 4) * width * depth,
  girth: width + (Math.PI / 2) * Math.hypot(width / Math.SQRT2, depth * Math.SQRT2),
});

function bandUnder(
  cells: Cells,
  place: Vec3,
  width: number,
  reached: number,
  floods: boolean,
  shuts: boolean,
): readonly [number, number] {
  if (!floods && !shuts) return [0, 0];
  const [least, most] = bandDeep.map((deep) =>
    Math.min(reached / 2, volumeWithin(cells, place, deep * width)),
  );
  const froth = frothShare * reached;
  return [shuts ? least : 0, Math.max(shuts ? most : 0, floods ? froth : 0)];
}

function volumeWithin(cells: Cells, [x, y, z]: Vec3, radius: number): number {
  const { at, low, cell, count, share } = cells;
  let sum = 0;
  for (let c = 0; c < count; c++) {
    const dx = low[0] + at[3 * c] * cell - x;
    const dy = low[1] + at[3 * c + 1] * cell - y;
    const dz = low[2] + at[3 * c + 2] * cell - z;
    if (dx * dx + dy * dy + dz * dz <= radius * radius) sum += share[c];
  }
  return sum * cell ** 3;
}

function middleOfAll(cells: Cells, list: readonly number[]): Vec3 {
  const sum = [0, 0, 0];
  for (const c of list) {
    const middle = middleOf(cells, c);
    for (let x = 0; x < 3; x++) sum[x] += middle[x] / list.length;
  }
  return [sum[0], sum[1], sum[2]];
}
