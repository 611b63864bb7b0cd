import { type Part, part } from '../mold/index.ts';
import { asSolid, onBed } from './as-solid.ts';
import { sprueFormBody } from './sprue-form-body.ts';

/** The center sprue form: shaft with draft, well, dish over the well's dome, fillets, grip. Stands on the well. */
export const sprueForm: Part = part({
  id: 'sprue-form',
  title: 'sprue form',
  scope: 'whole',
  processes: ['rubber', 'rigid', 'poured'],
  jobs: ({ disc, sprue, fixture }) =>
    sprue ? [{ subject: 'sprue', input: { disc, sprue, chordError: fixture.chordError } }] : [],
  run: ({ disc, sprue, chordError }, { kernel }) =>
    kernel.scope((scope) => [
      asSolid(scope, sprueFormBody(scope, sprue, { disc, chordError }), onBed(-sprue.wellDepth), {
        id: 'sprue-form',
        title: 'center sprue form',
        role: 'sprue form',
        subjects: ['sprue'],
      }),
    ]),
});
