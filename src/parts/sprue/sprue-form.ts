import { segmentsFor } from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import {
  type Disc,
  type Fixture,
  type Part,
  type Solid,
  type Sprue,
  shaftPieceOutline,
  task,
  wellPieceOutline,
} from '../../mold/index.ts';
import { asSolid, labelFindings, onBed } from '../making/index.ts';
import { gripCutters, gripLabel, gripRoom, type Stem, ventCutter } from './sprue-cuts.ts';
import { sprueFormBody } from './sprue-form-body.ts';

interface FormInput {
  readonly disc: Disc;
  readonly sprue: Sprue;
  readonly fixture: Fixture;
  readonly words: readonly string[];
}

/**
 * The center sprue form: shaft with draft, well, dish over the well's dome, fillets, grip with its flats, puller hole
 * and label, vent flat. In one piece it stands on the well; in two, the well stands on its underside with a spigot up,
 * and the shaft on the parting plane, the spigot's hole larger by the fixtures' clearance.
 */
export const sprueForm: Part = task({
  id: 'sprue-form',
  title: 'sprue form',
  processes: ['rubber', 'rigid', 'poured'],
  units: ({ disc, sprue, fixture, revision }) =>
    sprue
      ? [
          {
            subject: 'sprue',
            about: ['sprue'],
            input: { disc, sprue, fixture, words: formWords('sprue', revision) },
          },
        ]
      : [],
  run: (input, { kernel }) =>
    kernel.scope((scope) => ({
      solids: input.sprue.pieces === 'two' ? twoPieces(scope, input) : [onePiece(scope, input)],
      findings: labelFindings('sprue form', input.words, gripRoom(stemOf(input))),
    })),
});

/** What is engraved on top of a form or plug. */
export const formWords = (name: string, revision: string): string[] =>
  revision === '' ? [name] : [name, `r${revision}`];

const stemOf = ({ sprue, disc, fixture }: FormInput): Stem => ({
  sprue,
  upper: disc.upper,
  smaller: 0,
  foot: sprue.domeHeight - sprue.wellDepth,
  chordError: fixture.chordError,
  holes: fixture.holeCompensation ?? 0,
});

function cutStem(scope: Scope, body: Body, input: FormInput): Body {
  const stem = stemOf(input);
  const cutters = [
    ...gripCutters(scope, stem),
    ...ventCutter(scope, stem),
    ...gripLabel(scope, input.words, stem),
  ];
  return scope.subtract(body, cutters, 'sprue form');
}

const naming = { role: 'sprue form', subjects: ['sprue'] } as const;

function onePiece(scope: Scope, input: FormInput): Solid {
  const { sprue, disc, fixture } = input;
  const { chordError, compensation } = fixture;
  const body = cutStem(scope, sprueFormBody(scope, sprue, { disc, chordError }), input);
  const named = { ...naming, id: 'sprue-form', title: 'center sprue form', compensation };
  return asSolid(scope, body, onBed(-sprue.wellDepth), named);
}

function twoPieces(scope: Scope, input: FormInput): Solid[] {
  const { sprue, disc, fixture } = input;
  const { chordError, clearance, compensation } = fixture;
  const segments = segmentsFor(sprue.wellRadius, chordError);
  const well = scope.revolve(wellPieceOutline(sprue, disc.upper, chordError), segments, 'sprue form');
  const outline = shaftPieceOutline(sprue, disc.upper, clearance, chordError);
  const shaft = cutStem(scope, scope.revolve(outline, segments, 'sprue form'), input);
  return [
    asSolid(scope, well, onBed(-sprue.wellDepth), {
      ...naming,
      id: 'sprue-form-well',
      title: 'center sprue form, well with spigot',
      compensation,
    }),
    asSolid(scope, shaft, onBed(0), {
      ...naming,
      id: 'sprue-form-shaft',
      title: 'center sprue form, shaft',
      compensation,
    }),
  ];
}
