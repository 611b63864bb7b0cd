import { type Finding, finding } from '../findings/index.ts';
import {
  type Body,
  boundsOf,
  compose,
  moveMesh,
  type Scope,
  type Solid,
  scaling,
  translation,
  upsideDown,
} from '../kernel/index.ts';
import {
  type BuildUpSpace,
  buildUpSpaces,
  looseSheet,
  type Part,
  prismUnder,
  type Side,
  work,
} from '../mold/index.ts';
import { asSolid } from './as-solid.ts';

/** Smaller build-ups (mm3) cannot be handled, and that is said: about 2 x 2 x 2.5 mm. From memory. */
const leastVolume = 10;
/** What the booleans leave behind by rounding, mm3. */
const speck = 0.05;

interface BuildUpInput extends BuildUpSpace {
  readonly x: number;
  readonly y: number;
  readonly estimated: boolean;
}

/**
 * Part-support build-ups: loose bodies that fill the space between the parting plane and the raised parting surface
 * under a master, so that it does not bend when the half is pressed; where the surface falls below the plane, the
 * same over the master, upside down. Numbered by their place in the mold's list of supports; further pieces of one
 * placement have a number more. They print flat on the face that lies on the plane. None where nothing is raised by
 * more than 0.3 mm; those under 10 mm3 are left out and said.
 */
export const buildUp: Part = work({
  id: 'build-up',
  title: 'part-support build-ups',
  scope: 'placement',
  processes: ['rubber'],
  jobs: (mold) =>
    buildUpSpaces(mold).flatMap((space) =>
      mold.placements
        .filter(({ id }) => id === space.id)
        .map(({ x, y, estimated }) => ({ subject: space.id, input: { ...space, x, y, estimated } })),
    ),
  run: (input, { kernel }) =>
    kernel.scope((scope) => {
      const pieces = buildUpBodies(scope, input);
      const [large, crumbs] = [
        pieces.filter(({ body }) => body.volume() >= leastVolume),
        pieces.filter(({ body }) => body.volume() < leastVolume),
      ];
      return {
        solids: large.map(({ body, side }, piece) => asBuildUp(scope, body, side, piece, input)),
        findings: crumbs.length > 0 ? [leftOut(input.id, crumbs)] : [],
      };
    }),
});

/** Crumbs are rubber all the same: the bench packs them by hand, so it must know how much. */
function leftOut(id: string, crumbs: readonly BuildUpBody[]): Finding {
  const volume = crumbs.reduce((sum, { body }) => sum + body.volume(), 0);
  const count = crumbs.length === 1 ? 'One build-up' : `${crumbs.length} build-ups`;
  return finding('mold.small-build-ups', {
    subject: id,
    measured: { value: volume, unit: 'mm3' },
    limit: { value: leastVolume, unit: 'mm3' },
    says: `${count} of ${id}, ${volume.toFixed(1)} mm3 in all, would be too small to handle and ${crumbs.length === 1 ? 'is' : 'are'} left out.`,
  });
}

interface BuildUpBody {
  readonly side: Side;
  readonly body: Body;
}

/** Pieces in the mold frame, those above the plane first, each side in the kernel's order. */
export function buildUpBodies(scope: Scope, input: Omit<BuildUpSpace, 'number'>): BuildUpBody[] {
  const [own, ...others] = [input.own, ...input.others].map(({ mesh, matrix }) => moveMesh(mesh, matrix));
  const { surface, clearance, id } = input;
  const what = `build-up of ${id}`;
  return ([1, -1] as const).flatMap((side) => {
    const sheet = looseSheet({ side, surface, own, others, clearance });
    if (!sheet) return [];
    const { min } = boundsOf(sheet.positions);
    const prism = moveMesh(prismUnder(sheet, min[2] - 1), scaling(1, 1, side));
    const [above, below] = scope.splitAt(scope.fromMesh(prism, what), 0, what);
    const body = side === 1 ? above : below;
    if (body.isEmpty()) return [];
    return scope
      .pieces(body, what)
      .filter((piece) => piece.volume() >= speck)
      .map((piece) => ({ side, body: piece }));
  });
}

function asBuildUp(
  scope: Scope,
  body: Body,
  side: Side,
  piece: number,
  { id, number, x, y, estimated }: BuildUpInput,
): Solid {
  const more = piece === 0 ? '' : `-${piece + 1}`;
  const toPrint = compose(...(side === 1 ? [] : [upsideDown]), translation(-x, -y, 0));
  return asSolid(scope, body, toPrint, {
    id: `build-up-${String(number).padStart(2, '0')}${more}`,
    title: `build-up ${number}${more} ${side === 1 ? 'under' : 'over'} ${id}`,
    role: 'build-up',
    subjects: [id],
    estimated,
  });
}
