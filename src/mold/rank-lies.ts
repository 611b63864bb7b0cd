import {
  boundsOf,
  compose,
  dot,
  moveMesh,
  radPerDegree,
  rotation,
  type TriangleMesh,
  translation,
  type Vec3,
} from '../geometry/index.ts';
import { columnsOf, measureMesh, principalAxes, widestHeight } from '../mesh/index.ts';
import { flatPartingSurface } from './parting-surface.ts';
import { undercut } from './undercut.ts';

/** A way a master can lie, with the sink at which a flat parting plane leaves the least undercut. mm, mm3. */
export interface RankedLie {
  /** Turns as in a plan: about the file's x, then its y. */
  readonly turnXRad: number;
  readonly turnYRad: number;
  /** Depth below the parting plane. */
  readonly sink: number;
  readonly height: number;
  /** Undercut of both halves that a flat parting plane leaves. */
  readonly flat: number;
  /** What no parting surface can do away with. */
  readonly irreducible: number;
  /** `flat` of the master's volume. */
  readonly share: number;
  /** The lie it has in its file. */
  readonly asInFile: boolean;
}

/** Turns tried about two principal axes, and how they are halved afterwards, degrees. */
const step = 15;
const halvings = 2;
/** Columns across the longer side: while searching, and for the figures given. */
const across = { search: 60, figures: 250 };
/** Ways less than this apart count as one, degrees. */
const apart = 20;

interface Tried {
  /** The direction in the file that is turned up. */
  readonly up: Vec3;
  readonly flat: number;
}

/**
 * The best ways for a master (file axes, mm) to lie, least undercut first, up to `most` of them, and among them the
 * lie it has in its file. Directions are tried over all turns about two principal axes in steps of 15 degrees, the best then
 * closer; up and down count as one, since they only change the halves. Equal to a thousandth of the volume, the lower
 * lie is named first. A mesh without volume gives none.
 */
export function rankLies(mesh: TriangleMesh, most = 5): RankedLie[] {
  const measures = measureMesh(mesh);
  const volume = Math.abs(measures.volume);
  if (!(volume > 0)) return [];
  const tryUp = (up: Vec3): Tried => ({ up, flat: leastFlat(mesh, up) });
  const found = directions(principalAxes(measures)).map(tryUp);
  found.sort((a, b) => a.flat - b.flat);
  const best = distinct(found, most).map((start) => closer(start, tryUp));
  const lies = distinct(
    best.sort((a, b) => a.flat - b.flat),
    most,
  ).map(({ up }) => lieOf(mesh, up, volume, false));
  const tie = (lie: RankedLie): number => Math.round(lie.share * 1000);
  const others = lies.filter(({ turnXRad, turnYRad }) => Math.hypot(turnXRad, turnYRad) > radPerDegree / 2);
  return [...others, lieOf(mesh, [0, 0, 1], volume, true)].sort(
    (a, b) => tie(a) - tie(b) || a.height - b.height,
  );
}

/** Over the half sphere: the third axis turned about the first and then the second. */
function directions([first, second, third]: readonly [Vec3, Vec3, Vec3]): Vec3[] {
  const all: Vec3[] = [];
  for (let a = -90 + step; a <= 90; a += step) {
    for (let b = -90 + step; b <= 90; b += step) {
      const [sa, ca] = [Math.sin(a * radPerDegree), Math.cos(a * radPerDegree)];
      const [sb, cb] = [Math.sin(b * radPerDegree), Math.cos(b * radPerDegree)];
      // With the first turn a quarter, the second changes nothing.
      if (a === 90 && b !== 0) continue;
      all.push(mix([first, sb * ca], [second, sa], [third, cb * ca]));
    }
  }
  return all;
}

/** Looks round the best way with ever smaller steps. */
function closer(start: Tried, tryUp: (up: Vec3) => Tried): Tried {
  let best = start;
  for (let k = 1; k <= halvings; k++) {
    const tilt = Math.tan((step * radPerDegree) / 2 ** k);
    const [u, v] = square(best.up);
    const around = [0, 1, 2, 3, 4, 5, 6, 7].map((eighth) => {
      const angle = (eighth * Math.PI) / 4;
      return tryUp(unit(mix([best.up, 1], [u, tilt * Math.cos(angle)], [v, tilt * Math.sin(angle)])));
    });
    best = [best, ...around].reduce((least, one) => (one.flat < least.flat ? one : least));
  }
  return best;
}

function distinct(sorted: readonly Tried[], most: number): Tried[] {
  const kept: Tried[] = [];
  for (const one of sorted) {
    if (kept.length === most) break;
    if (kept.every(({ up }) => Math.abs(dot(up, one.up)) < Math.cos(apart * radPerDegree))) kept.push(one);
  }
  return kept;
}

function lieOf(mesh: TriangleMesh, up: Vec3, volume: number, asInFile: boolean): RankedLie {
  // Of up and down the one that is nearer to how the file has it.
  const { turnXRad, turnYRad } = turnsOf(up[2] < 0 ? mix([up, -1]) : up);
  const { flat, irreducible, sink, height } = measure(mesh, { turnXRad, turnYRad });
  return { turnXRad, turnYRad, sink, height, flat, irreducible, share: flat / volume, asInFile };
}

/** About x until y is gone, then about y until x is. */
function turnsOf([x, y, z]: Vec3): { turnXRad: number; turnYRad: number } {
  return { turnXRad: Math.atan2(y, z) + 0, turnYRad: Math.atan2(-x, Math.hypot(y, z)) + 0 };
}

function measure(mesh: TriangleMesh, { turnXRad, turnYRad }: { turnXRad: number; turnYRad: number }) {
  const rotated = moveMesh(mesh, compose(rotation('y', turnYRad), rotation('x', turnXRad)));
  const { min, max } = boundsOf(rotated.positions);
  const widest = widestHeight(rotated);
  const cell = Math.max(max[0] - min[0], max[1] - min[1]) / across.figures;
  const sunk = moveMesh(rotated, translation(0, 0, -widest));
  const { below, above, irreducible } = undercut(sunk, flatPartingSurface(1), cell);
  return { flat: below + above, irreducible, sink: widest - min[2], height: max[2] - min[2] };
}

/**
 * Least undercut any flat plane leaves, on coarse columns: each from b to t adds |s - [b, t]| and the air within; the
 * best s is the median of all b and t.
 */
function leastFlat(mesh: TriangleMesh, up: Vec3): number {
  const { turnXRad, turnYRad } = turnsOf(up);
  const rotated = moveMesh(mesh, compose(rotation('y', turnYRad), rotation('x', turnXRad)));
  const { min, max } = boundsOf(rotated.positions);
  const cell = Math.max(max[0] - min[0], max[1] - min[1]) / across.search;
  const { start, z, up: faceUp } = columnsOf(rotated, { cell });
  const ends: number[] = [];
  let air = 0;
  for (let k = 0; k + 1 < start.length; k++) {
    if (start[k] === start[k + 1]) continue;
    ends.push(z[start[k]], z[start[k + 1] - 1]);
    air += z[start[k + 1] - 1] - z[start[k]];
    for (let at = start[k]; at < start[k + 1]; at++) air -= faceUp[at] ? z[at] : -z[at];
  }
  const sorted = Float64Array.from(ends).sort();
  const s = sorted[sorted.length >> 1];
  let missed = 0;
  for (let k = 0; k < ends.length; k += 2) missed += Math.max(0, s - ends[k + 1], ends[k] - s);
  return (air + missed) * cell * cell;
}

const mix = (...parts: readonly (readonly [Vec3, number])[]): Vec3 => [
  parts.reduce((sum, [v, share]) => sum + v[0] * share, 0),
  parts.reduce((sum, [v, share]) => sum + v[1] * share, 0),
  parts.reduce((sum, [v, share]) => sum + v[2] * share, 0),
];
const unit = (v: Vec3): Vec3 => mix([v, 1 / Math.hypot(...v)]);

/** Two unit vectors square to a third and to each other. */
function square(w: Vec3): [Vec3, Vec3] {
  const aside: Vec3 = Math.abs(w[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0];
  const u = unit(mix([aside, 1], [w, -dot(aside, w)]));
  return [u, [w[1] * u[2] - w[2] * u[1], w[2] * u[0] - w[0] * u[2], w[0] * u[1] - w[1] * u[0]]];
}
