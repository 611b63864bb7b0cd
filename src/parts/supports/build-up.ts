import { type Finding, finding, type UnitSystem } from '../../findings/index.ts';
import {
  boundsOf,
  compose,
  inverse,
  moveMesh,
  scaling,
  translation,
  upsideDown,
} from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import {
  type BuildUpSpace,
  buildUpSpaces,
  looseSheet,
  makeAlways,
  type Part,
  prismUnder,
  type Side,
  type Solid,
  type Tools,
  task,
} from '../../mold/index.ts';
import { asSolid } from '../making/index.ts';
import { type Foot, feetOf, footOf } from './build-up-feet.ts';
import { type BuildUpShape, cuttingOutline, numbered } from './build-up-mark.ts';

/** Smaller build-ups (mm3) cannot be handled, and that is said: about 2 x 2 x 2.5 mm. From memory. */
const leastVolume = 10;
/** What the booleans leave behind by rounding, mm3. */
const smallVolume = 0.05;

interface BuildUpInput extends BuildUpSpace {
  readonly x: number;
  readonly y: number;
  readonly estimated: boolean;
  readonly compensation: number | undefined;
  readonly units: UnitSystem;
}

/**
 * Part-support build-ups: loose bodies that fill the space between the parting plane and the raised parting surface
 * under a master, so that it does not bend when the half is pressed; where the surface falls below the plane, the
 * same over the master, upside down. Numbered by their place in the mold's list of supports; further pieces of one
 * placement have a number more. They print flat on the face that lies on the plane, with
 * their number engraved there where it fits; each also comes as a drawing to cut it from rubber by. None where nothing is raised by
 * more than 0.3 mm; those under 10 mm3 are left out and said.
 */
export const buildUp: Part = task({
  id: 'build-up',
  title: 'part-support build-ups',
  processes: ['rubber'],
  units: (mold) =>
    buildUpSpaces(mold).flatMap((space) =>
      mold.placements
        .filter(({ id }) => id === space.id)
        .map(({ x, y, estimated }) => {
          // What is cut from something else does not shrink as prints do.
          const own = mold.supports.find(({ placement }) => placement === space.id)?.material;
          const compensation = own === undefined ? mold.fixture.compensation : undefined;
          const input = { ...space, x, y, estimated, compensation, units: mold.units };
          return { subject: space.id, about: [space.id], input };
        }),
    ),
  run: (input, { kernel, memoize = makeAlways }) =>
    kernel.scope((scope) => {
      const { large, crumbs } = bySize(buildUpBodies(scope, input));
      memoize(feetOf, spaceOf(input), () => feetOfLarge(scope, large, input));
      return {
        solids: large.map((one, piece) => asBuildUp(scope, one.body, named(one, piece, input))),
        drawings: large.map((one, piece) => cuttingOutline(scope, one.body, named(one, piece, input))),
        findings: crumbs.length > 0 ? [leftOut(input.id, crumbs)] : [],
      };
    }),
});

/** Those that can be handled, and the rest. */
const bySize = (pieces: readonly BuildUpBody[]) => ({
  large: pieces.filter(({ body }) => body.volume() >= leastVolume),
  crumbs: pieces.filter(({ body }) => body.volume() < leastVolume),
});

const spaceOf = ({ id, number, surface, own, others, clearance }: BuildUpSpace): BuildUpSpace => ({
  id,
  number,
  surface,
  own,
  others,
  clearance,
});

const feetOfLarge = (scope: Scope, large: readonly BuildUpBody[], { number }: BuildUpSpace): Foot[] =>
  large.map((one, piece) => footOf(scope, one, wordsOf(number, piece)));

/** What the build-ups of a space stand on, those left out of the solids left out here too. */
export const buildUpFeet = (space: BuildUpSpace, { kernel, memoize = makeAlways }: Tools): Foot[] =>
  memoize(feetOf, spaceOf(space), () =>
    kernel.scope((scope) => feetOfLarge(scope, bySize(buildUpBodies(scope, space)).large, space)),
  );

/** Crumbs are rubber all the same: the bench packs them by hand, so it must know how much. */
function leftOut(id: string, crumbs: readonly BuildUpBody[]): Finding {
  const volume = crumbs.reduce((sum, { body }) => sum + body.volume(), 0);
  return finding('mold.small-build-ups', {
    subject: id,
    values: { measured: volume, limit: leastVolume, pieces: crumbs.length },
  });
}

interface BuildUpBody {
  readonly side: Side;
  readonly body: Body;
}

/** Pieces in the mold frame, those above the plane first, each side in the kernel's order. */
function buildUpBodies(scope: Scope, input: Omit<BuildUpSpace, 'number'>): BuildUpBody[] {
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
      .filter((piece) => piece.volume() >= smallVolume)
      .map((piece) => ({ side, body: piece }));
  });
}

/** Further pieces of one placement have a number more. */
const wordsOf = (number: number, piece: number): string =>
  piece === 0 ? String(number) : `${number}-${piece + 1}`;

interface Named extends BuildUpShape {
  readonly compensation: number | undefined;
}

function named({ side }: BuildUpBody, piece: number, input: BuildUpInput): Named {
  const { id, number, x, y, estimated, compensation, units } = input;
  const more = piece === 0 ? '' : `-${piece + 1}`;
  return {
    id: `build-up-${String(number).padStart(2, '0')}${more}`,
    title: `build-up ${number}${more} ${side === 1 ? 'under' : 'over'} ${id}`,
    words: wordsOf(number, piece),
    subject: id,
    x,
    y,
    side,
    estimated,
    compensation,
    units,
  };
}

function asBuildUp(scope: Scope, body: Body, shape: Named): Solid {
  const { id, title, words, subject, x, y, side, estimated, compensation } = shape;
  const toPrint = compose(...(side === 1 ? [] : [upsideDown]), translation(-x, -y, 0));
  const marked = numbered(scope, scope.move(body, toPrint, title), words);
  const placed = scope.move(marked, inverse(toPrint), title);
  return asSolid(scope, placed, toPrint, {
    id,
    title,
    role: 'build-up',
    subjects: [subject],
    estimated,
    compensation,
  });
}
