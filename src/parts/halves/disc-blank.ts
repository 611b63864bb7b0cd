import type { Body, Scope } from '../../kernel/index.ts';
import { type Part, task } from '../../mold/index.ts';
import { asSolid, type HalfName, halfNames, halfToPrint } from '../making/index.ts';
import { sprueOpening } from '../sprue/index.ts';
import { type DiscShape, discBody, labelCorners, markCutters, markFindings } from './plain-disc.ts';

/** The plain discs of both halves: opening with draft and well, rim chamfer, index mark, engraved label. */
export const discBlank: Part = task({
  id: 'disc-blank',
  title: 'disc blanks',
  processes: ['rubber', 'rigid', 'poured'],
  units: ({ disc, sprue, fixture, revision, units }) => {
    const { chordError } = fixture;
    const shape: DiscShape = { disc, ...(sprue && { sprue }), chordError, revision, units };
    return halfNames.map((half) => ({ subject: 'disc', about: [], input: { half, shape } }));
  },
  run: ({ half, shape }, { kernel }) =>
    kernel.scope((scope) => ({
      solids: [
        asSolid(scope, blankBody(scope, half, shape), halfToPrint(half, shape.disc), {
          id: `${half}-blank`,
          title: `${half} disc blank`,
          role: 'blank',
          subjects: ['disc', ...(shape.sprue ? ['sprue'] : [])],
          lettered: labelCorners(half, shape),
        }),
      ],
      findings: markFindings(half, shape),
    })),
});

function blankBody(scope: Scope, half: HalfName, shape: DiscShape): Body {
  return scope.subtract(
    discBody(scope, half, shape),
    [...sprueOpening(scope, half, shape), ...markCutters(scope, half, shape)],
    `${half} disc blank`,
  );
}
