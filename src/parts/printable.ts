import { type Finding, finding } from '../findings/index.ts';
import {
  boundsOf,
  movePoint,
  onlyToLookAt,
  type Solid,
  type SolidRole,
  type TriangleMesh,
  type Vec3,
} from '../kernel/index.ts';
import { thinnestWall } from '../mesh/index.ts';
import type { Mold } from '../mold/index.ts';
import { labelDepth } from './label.ts';

/** A face no higher than this is of the first layer, which the bed holds, mm. Common practice, no published source. */
const firstLayer = 0.3;
/** Angles are told apart to this, rad: a face at the limit is within it. */
const angleStep = (0.5 * Math.PI) / 180;
/** Less than this in all is not worth a word, mm2: the ceilings of single letters. */
const leastArea = 25;
/** What is engraved on its upper face, and flat otherwise. */
const plates: ReadonlySet<SolidRole> = new Set(['jig', 'layout plate', 'nest', 'can part', 'gauge']);
/** Rays cast into one solid. */
const rays = 20000;

/**
 * What the process named in the plan cannot make well, for each solid as it stands to be made: overhangs past its
 * limit, walls under its least feature. One note where the plan names no process.
 */
export function judgePrintable(solids: readonly Solid[], { fixture: { making } }: Mold): Finding[] {
  const made = solids.filter(({ role }) => !onlyToLookAt(role));
  if (made.length === 0) return [];
  if (!making) {
    const says = 'How the fixtures are made is not said; overhangs and least features are not looked at.';
    return [finding('making.not-checked', { subject: 'fixture', says })];
  }
  return made.flatMap((solid) => [
    ...(making.overhangRad === undefined ? [] : overhangs(solid, making.overhangRad)),
    ...thinWalls(solid, making.leastFeature),
  ]);
}

function overhangs(solid: Solid, limitRad: number): Finding[] {
  const { area, steepestRad, place } = overhang(solid.mesh, limitRad + angleStep);
  if (area < leastArea || !place) return [];
  const degrees = (rad: number): string => ((rad * 180) / Math.PI).toFixed(0);
  return [
    finding('making.overhang', {
      subject: solid.id,
      place: movePoint(solid.toMold, place),
      measured: { value: area, unit: 'mm2' },
      says:
        `${area.toFixed(0)} mm2 of the ${solid.title} hang over by more than ${degrees(limitRad)} degrees ` +
        `from upright, up to ${degrees(steepestRad)}.`,
    }),
  ];
}

/**
 * Area of the faces of a solid standing on z = 0 that lean out by more than `limitRad` from upright (a ceiling: a
 * quarter turn) with nothing under them but air, the steepest lean, and the middle of the largest such face.
 */
export function overhang(
  { positions: p, triangles: t }: TriangleMesh,
  limitRad: number,
): { area: number; steepestRad: number; place?: Vec3 } {
  const limit = Math.sin(limitRad);
  let area = 0;
  let steepest = 0;
  let largest = 0;
  let place: Vec3 | undefined;
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [t[i] * 3, t[i + 1] * 3, t[i + 2] * 3];
    if (Math.max(p[a + 2], p[b + 2], p[c + 2]) < firstLayer) continue;
    const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
    const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
    const down = uy * vx - ux * vy;
    if (!(down > 0)) continue;
    const twice = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, down);
    if (down / twice <= limit) continue;
    area += twice / 2;
    steepest = Math.max(steepest, down / twice);
    if (twice > largest) {
      largest = twice;
      place = [0, 1, 2].map((axis) => (p[a + axis] + p[b + axis] + p[c + axis]) / 3) as unknown as Vec3;
    }
  }
  return { area, steepestRad: Math.asin(Math.min(1, steepest)), ...(place && { place }) };
}

function thinWalls(solid: Solid, least: number): Finding[] {
  // Between the strokes of an engraved letter ridges run out to nothing; they hold nothing.
  const top = boundsOf(solid.mesh.positions).max[2];
  const below = plates.has(solid.role) ? top - labelDepth : Infinity;
  const found = thinnestWall(solid.mesh, rays, below);
  // A hundredth of a mm: what is drawn at the limit is at the limit.
  if (!found || found.thickness >= least - 0.01) return [];
  return [
    finding('making.thin', {
      subject: solid.id,
      place: movePoint(solid.toMold, found.place),
      measured: { value: found.thickness, unit: 'mm' },
      limit: { value: least, unit: 'mm' },
      says:
        `The ${solid.title} is ${found.thickness.toFixed(2)} mm thick at one place, under the ${least} mm ` +
        `that come out whole (looked at from up to ${rays} places on it).`,
    }),
  ];
}
