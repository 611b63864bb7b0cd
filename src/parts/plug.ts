import { segmentsFor } from '../kernel/index.ts';
import { type Part, part, plugOutline } from '../mold/index.ts';
import { asSolid, onBed } from './as-solid.ts';

/** The plug that keeps the pouring hole open: the form's shaft and grip alone, smaller by the fixtures' clearance. */
export const plug: Part = part({
  id: 'plug',
  title: 'plug',
  scope: 'whole',
  processes: ['rubber', 'rigid', 'poured'],
  jobs: ({ disc, sprue, fixture }) =>
    sprue ? [{ subject: 'sprue', input: { upper: disc.upper, sprue, fixture } }] : [],
  run: ({ upper, sprue, fixture }, { kernel }) =>
    kernel.scope((scope) => {
      const outline = plugOutline(sprue, upper, fixture.clearance);
      const body = scope.revolve(outline, segmentsFor(sprue.holeRadius, fixture.chordError), 'plug');
      return [
        asSolid(scope, body, onBed(0), { id: 'plug', title: 'plug', role: 'plug', subjects: ['sprue'] }),
      ];
    }),
});
