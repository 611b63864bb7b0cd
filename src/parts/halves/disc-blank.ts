import type { Body, Scope } from '../../kernel/index.ts';
import { type Mold, type Part, task } from '../../mold/index.ts';
import { asSolid, type HalfName, halfNames, halfToPrint } from '../making/index.ts';
import { sprueOpening } from '../sprue/index.ts';
import {
  type DiscShape,
  discBody,
  labelCorners,
  labelWords,
  markCutters,
  markFindings,
} from './plain-disc.ts';

/**
 * The plain discs of both halves: opening with draft and well, rim chamfer, index mark, engraved label. Where one is
 * like the other it is one solid, to be made twice. Halves that are printed, machined or poured are made without, and so
 * are those that nothing is cut into: they are the blanks themselves.
 */
export const discBlank: Part = {
  ...task({
    id: 'disc-blank',
    title: 'disc blanks',
    processes: ['rubber', 'rigid', 'poured'],
    units: ({ disc, sprue, fixture, revision, units }) => {
      const { chordError } = fixture;
      const shape: DiscShape = { disc, ...(sprue && { sprue }), chordError, revision, units };
      const made = halvesAlike(shape) ? (['lower'] as const) : halfNames;
      return made.map((half) => ({ subject: 'disc', about: [], input: { half, shape } }));
    },
    run: ({ half, shape }, { kernel }) =>
      kernel.scope((scope) => ({
        solids: [
          {
            ...asSolid(scope, blankBody(scope, half, shape), halfToPrint(half, shape.disc), {
              ...namesOf(half, shape),
              role: 'blank',
              subjects: ['disc', ...(shape.sprue ? ['sprue'] : [])],
              lettered: labelCorners(half, shape),
            }),
            ...(halvesAlike(shape) && { count: 2 }),
          },
        ],
        findings: markFindings(half, shape),
      })),
  }),
  unasked: (mold) => mold.process === 'rubber' && isCutInto(mold),
};

/** Turned over, one is the other: what tells them apart is thickness, opening and label. */
const halvesAlike = (shape: DiscShape): boolean =>
  shape.disc.lower === shape.disc.upper && !shape.sprue && labelWords('lower', shape).length === 0;

const namesOf = (half: HalfName, shape: DiscShape) =>
  halvesAlike(shape)
    ? { id: 'disc-blank', title: 'disc blank, 2 times' }
    : { id: `${half}-blank`, title: `${half} disc blank` };

/** Whether anything but the opening is cut into a half or stands out of it. */
const isCutInto = ({ placements, bosses, tabs, notches, channels, ventPins }: Mold): boolean =>
  [placements, bosses, tabs, notches, channels, ventPins].some((things) => things.length > 0);

function blankBody(scope: Scope, half: HalfName, shape: DiscShape): Body {
  return scope.subtract(
    discBody(scope, half, shape),
    [...sprueOpening(scope, half, shape), ...markCutters(scope, half, shape)],
    `${half} disc blank`,
  );
}
