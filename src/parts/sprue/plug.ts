import { segmentsFor } from '../../geometry/index.ts';
import { type Part, plugOutline, task } from '../../mold/index.ts';
import { asSolid, labelFindings, onBed } from '../making/index.ts';
import { gripCutters, gripLabel, gripRoom, type Stem } from './sprue-cuts.ts';
import { formWords } from './sprue-form.ts';

/**
 * The plug that keeps the pouring hole open: the form's shaft and grip alone, smaller by the fixtures' clearance, with
 * the form's flats, and its puller hole as far as 2 mm over the foot.
 */
export const plug: Part = task({
  id: 'plug',
  title: 'plug',
  processes: ['rubber', 'rigid', 'poured'],
  units: ({ disc, sprue, fixture, revision }) =>
    sprue
      ? [
          {
            subject: 'sprue',
            about: ['sprue'],
            input: {
              upper: disc.upper,
              sprue,
              fixture,
              words: formWords('plug', revision),
            },
          },
        ]
      : [],
  run: ({ upper, sprue, fixture, words }, { kernel }) =>
    kernel.scope((scope) => {
      const { chordError, clearance, compensation } = fixture;
      const stem: Stem = {
        sprue,
        upper,
        smaller: clearance,
        foot: 0,
        chordError,
        holes: fixture.holeCompensation ?? 0,
      };
      const outline = plugOutline(sprue, upper, clearance);
      const plain = scope.revolve(outline, segmentsFor(sprue.holeRadius, chordError), 'plug');
      const cutters = [...gripCutters(scope, stem), ...gripLabel(scope, words, stem)];
      const body = scope.subtract(plain, cutters, 'plug');
      const naming = { id: 'plug', title: 'plug', role: 'plug', subjects: ['sprue'], compensation } as const;
      return {
        solids: [asSolid(scope, body, onBed(0), naming)],
        findings: labelFindings('plug', words, gripRoom(stem)),
      };
    }),
});
