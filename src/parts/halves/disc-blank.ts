import type { Body, Scope } from '../../kernel/index.ts';
import { type Part, work } from '../../mold/index.ts';
import { asSolid, bothHalves, type Half, halfToPrint } from '../making/index.ts';
import { sprueOpening } from '../sprue/index.ts';
import { type BlankShape, discBody, labelCorners, markCutters, markFindings } from './plain-disc.ts';

/** The plain discs of both halves: opening with draft and well, rim chamfer, index mark, engraved label. */
export const discBlank: Part = work({
  id: 'disc-blank',
  title: 'disc blanks',
  scope: 'whole',
  processes: ['rubber', 'rigid', 'poured'],
  jobs: ({ disc, sprue, fixture, revision }) => {
    const shape: BlankShape = { disc, ...(sprue && { sprue }), chordError: fixture.chordError, revision };
    return bothHalves.map((half) => ({ subject: 'disc', input: { half, shape } }));
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

function blankBody(scope: Scope, half: Half, shape: BlankShape): Body {
  const opening = shape.sprue ? [sprueOpening(scope, half, shape.sprue, shape)] : [];
  return scope.subtract(
    discBody(scope, half, shape),
    [...opening, ...markCutters(scope, half, shape)],
    `${half} disc blank`,
  );
}
