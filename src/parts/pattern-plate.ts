import {
  type Body,
  compose,
  type Matrix4,
  type Scope,
  segmentsFor,
  translation,
  upsideDown,
} from '../kernel/index.ts';
import { type Part, part } from '../mold/index.ts';
import { asSolid } from './as-solid.ts';
import { bothHalves, type Half } from './half.ts';
import { halvesInput, subjectsOf } from './halves.ts';
import { type HalvesInput, halvesBodies } from './halves-bodies.ts';

/** Common practice, no published source, mm: stiff enough to be poured on and stripped from. */
export const plateWall = 4;
export const plateFloor = 5;
/** The half is made this much too thick for the cut, so that the plate's mouth is open without coplanar faces. */
const overlap = 1;

/**
 * Pattern plates: what is left of a cup when a half is taken out of it. Its floor is the parting face with the raised
 * part halves, gates, bosses and sprue; its wall is the rim. Silicone or resin poured into it to the brim becomes
 * the half. Stands on its floor.
 */
export const patternPlate: Part = part({
  id: 'pattern-plate',
  title: 'pattern plates',
  scope: 'whole',
  processes: ['poured'],
  jobs: (mold) => [{ subject: 'mold', input: halvesInput(mold) }],
  run: (input, { kernel }) =>
    kernel.scope((scope) => {
      const bodies = halvesBodies(scope, thickened(input), { marks: false });
      return bothHalves.map((half) => {
        const body = bodies[half];
        const cup = cupBody(scope, half, input);
        const solid = asSolid(
          scope,
          scope.subtract(cup, [body], `${half} pattern plate`),
          plateToPrint(half, input),
          {
            id: `${half}-pattern-plate`,
            title: `${half} pattern plate`,
            role: 'pattern plate',
            subjects: subjectsOf(input),
            estimated: input.placements.some(({ estimated }) => estimated),
            grazing: !input.parting.flat,
          },
        );
        scope.drop(body);
        return solid;
      });
    }),
});

/** The poured half has no chamfer: its outer face is the open brim. */
const thickened = (input: HalvesInput): HalvesInput => ({
  ...input,
  disc: {
    ...input.disc,
    lower: input.disc.lower + overlap,
    upper: input.disc.upper + overlap,
    rimChamfer: 0,
  },
});

/** How far the floor reaches past the parting plane: under the lowest place of the parting surface and the boss heads. */
function floorDepth(half: Half, { parting, bosses }: HalvesInput): number {
  const side = half === 'lower' ? 1 : -1;
  let past = 0;
  for (let i = 2; i < parting.sheet.positions.length; i += 3) {
    past = Math.max(past, side * parting.sheet.positions[i]);
  }
  const heads = half === 'lower' ? bosses.filter(({ kind }) => kind !== 'cap nut') : [];
  for (const { headHeight } of heads) past = Math.max(past, headHeight);
  return past + plateFloor;
}

function cupBody(scope: Scope, half: Half, input: HalvesInput): Body {
  const { disc, fixture } = input;
  const radius = disc.radius + plateWall;
  const segments = segmentsFor(radius, fixture.chordError);
  const ring = Array.from({ length: segments }, (_, i) => {
    const angle = (2 * Math.PI * i) / segments;
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  });
  const floor = floorDepth(half, input);
  return half === 'lower'
    ? scope.extrude([ring], -disc.lower, floor, 'pattern plate')
    : scope.extrude([ring], -floor, disc.upper, 'pattern plate');
}

/** The lower half's plate looks down in the mold frame and is turned over. */
const plateToPrint = (half: Half, input: HalvesInput): Matrix4 =>
  half === 'lower'
    ? compose(translation(0, 0, floorDepth(half, input)), upsideDown)
    : translation(0, 0, floorDepth(half, input));
