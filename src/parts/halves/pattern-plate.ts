import { compose, type Matrix4, segmentsFor, translation, upsideDown } from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import { bossSpace, isLoose, overlap, type Part, task } from '../../mold/index.ts';
import {
  asSolid,
  type HalfName,
  halfNames,
  type LabelRoom,
  labelCutter,
  labelFindings,
} from '../making/index.ts';
import { cutHalves, type HalvesInput } from './cut-halves.ts';
import { halvesInput, subjectsOf } from './halves.ts';
import { labelWords } from './plain-disc.ts';

/** Common practice, no published source, mm: stiff enough to be poured on and stripped from. */
export const plateWall = 4;
export const plateFloor = 5;

/**
 * Pattern plates: what is left of a cup when a half is taken out of it. Its floor is the parting face with the raised
 * part halves, gates, bosses and sprue; its wall is the rim. Silicone or resin poured into it to the brim becomes
 * the half. Stands on its floor.
 */
export const patternPlate: Part = task({
  id: 'pattern-plate',
  title: 'pattern plates',
  processes: ['poured'],
  units: (mold) => [{ subject: 'mold', about: [], input: halvesInput(mold) }],
  run: (input, { kernel }) =>
    kernel.scope((scope) => {
      const bodies = cutHalves(scope, thickened(input), { marks: false });
      const solids = halfNames.map((half) => {
        const body = bodies[half];
        const what = `${half} pattern plate`;
        const cup = cupBody(scope, half, input);
        const label = labelCutter(scope, labelWords(half, input), floorRoom(input));
        const solid = asSolid(
          scope,
          scope.subtract(cup, [...(label ? [scope.move(label, floorFace(half, input))] : []), body], what),
          plateToPrint(half, input),
          {
            id: `${half}-pattern-plate`,
            title: what,
            role: 'pattern plate',
            subjects: subjectsOf(input),
            estimated: input.placements.some(({ estimated }) => estimated),
            grazing: !input.parting.flat,
          },
        );
        scope.drop(body);
        return solid;
      });
      const findings = halfNames.flatMap((half) =>
        labelFindings(`${half} pattern plate`, labelWords(half, input), floorRoom(input)),
      );
      return { solids, findings };
    }),
});

/** The poured half has no chamfer: its outer face is the open brim, which is cut past so that it is open. */
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
function floorDepth(half: HalfName, { parting, bosses, process }: HalvesInput): number {
  const side = half === 'lower' ? 1 : -1;
  let past = 0;
  for (let i = 2; i < parting.sheet.positions.length; i += 3) {
    past = Math.max(past, side * parting.sheet.positions[i]);
  }
  const heads = half === 'lower' ? bosses.filter((boss) => !isLoose(boss, process)) : [];
  for (const boss of heads) past = Math.max(past, bossSpace(boss, process).height);
  return past + plateFloor;
}

function cupBody(scope: Scope, half: HalfName, input: HalvesInput): Body {
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

/** A strip across the middle of the floor's underside. */
const floorRoom = ({ disc }: HalvesInput): LabelRoom => ({
  x: 0,
  y: 0,
  width: 1.6 * disc.radius,
  height: Math.min(24, disc.radius / 2),
});

/** From the floor's underside as its reader sees it (z out of the face) to the mold frame. */
const floorFace = (half: HalfName, input: HalvesInput): Matrix4 =>
  half === 'lower'
    ? translation(0, 0, floorDepth(half, input))
    : compose(translation(0, 0, -floorDepth(half, input)), upsideDown);

/** The lower half's plate looks down in the mold frame and is turned over. */
const plateToPrint = (half: HalfName, input: HalvesInput): Matrix4 =>
  half === 'lower'
    ? compose(translation(0, 0, floorDepth(half, input)), upsideDown)
    : translation(0, 0, floorDepth(half, input));
