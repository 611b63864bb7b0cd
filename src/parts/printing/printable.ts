import { type Finding, finding } from '../../findings/index.ts';
import { boundsOf, movePoint, toDegrees, toRadians, type Vec3 } from '../../geometry/index.ts';
import { kindOfRole } from '../../kinds/index.ts';
import { thinnestWall } from '../../mesh/index.ts';
import type { Mold, Solid } from '../../mold/index.ts';
import { labelDepth } from '../making/index.ts';
import { overhang } from './overhang.ts';

/** Angles are told apart to this, rad: a face at the limit is within it. */
const angleStep = toRadians(0.5);
/** Less than this in all is not worth a word, mm2. */
const leastArea = 25;
/** Rays cast into one solid. */
const rays = 20000;

/**
 * What the process named in the plan cannot make well, for each solid as it stands to be made: overhangs past its
 * limit, walls under its least feature. One note where the plan names no process.
 */
export function judgePrintable(solids: readonly Solid[], { fixture: { making } }: Mold): Finding[] {
  const made = solids.filter(({ role }) => kindOfRole(role).printable);
  if (made.length === 0) return [];
  if (!making) return [finding('making.not-checked', { subject: 'fixture' })];
  return made.flatMap((solid) => [
    ...(making.overhangRad === undefined ? [] : overhangs(solid, making.overhangRad)),
    ...thinWalls(solid, making.leastFeature),
  ]);
}

function overhangs(solid: Solid, limitRad: number): Finding[] {
  const { area, steepestRad, place } = overhang(solid.mesh, limitRad + angleStep);
  if (area < leastArea || !place) return [];
  return [
    finding('making.overhang', {
      subject: solid.id,
      place: movePoint(solid.toMold, place),
      values: {
        measured: area,
        title: solid.title,
        allowed: toDegrees(limitRad),
        steepest: toDegrees(steepestRad),
      },
    }),
  ];
}

/**
 * Faces that may be the sides of an engraved letter, on whichever face a solid has its words: upright, no further from
 * its lowest or highest than letters are deep. Ridges between strokes run out to nothing, and hold nothing.
 */
function ofLettering({ mesh }: Solid): (middle: Vec3, normal: Vec3) => boolean {
  const { min, max } = boundsOf(mesh.positions);
  const [low, high] = [min[2] + labelDepth, max[2] - labelDepth];
  return ([, , z], [, , up]) => Math.abs(up) < 0.01 && (z < low || z > high);
}

function thinWalls(solid: Solid, least: number): Finding[] {
  const found = thinnestWall(solid.mesh, rays, ofLettering(solid));
  // A hundredth of a mm: what is drawn at the limit is at the limit.
  if (!found || found.thickness >= least - 0.01) return [];
  return [
    finding('making.thin', {
      subject: solid.id,
      place: movePoint(solid.toMold, found.place),
      values: { measured: found.thickness, limit: least, title: solid.title, rays },
    }),
  ];
}
