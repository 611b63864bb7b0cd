import { compose, inverse, type Matrix4, rotation, translation } from '../../geometry/index.ts';
import { type Body, KernelFault, type Scope } from '../../kernel/index.ts';
import {
  type Disc,
  type Notch,
  type NotchShape,
  notchOutline,
  notchShape,
  overlap,
  type Part,
  task,
} from '../../mold/index.ts';
import { asSolid, labelCutter, labelFindings } from '../making/index.ts';
import { formWords } from '../sprue/index.ts';

/** Quarter turn about y, outward becomes downward: the strip lies on the face that was at the rim. */
const layDown: Matrix4 = [0, 0, -1, 0, 0, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1];

/** What is drawn on the face at the can's wall, x along the strip, as seen from outside. */
const onOuterFace: Matrix4 = [0, 0, 1, 0, 0, -1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1];

/**
 * The witness notch as a strip to be stood against the can's wall, through both halves, inside the rim. The edge that
 * stands in rubber is rounded; those at the can's wall and its ends stay sharp, or rubber would creep in behind them.
 * Its name is engraved in the face at the wall where there is room; either way up it is the same.
 */
export const notch: Part = task({
  id: 'notch',
  title: 'witness notches',
  processes: ['rubber'],
  units: ({ notches, disc, fixture, revision }) =>
    notches.map((one) => {
      const { radius, lower, upper } = disc;
      const { compensation, chordError } = fixture;
      const size = { radius, lower, upper };
      const words = formWords(one.id, revision);
      return {
        subject: one.id,
        about: [one.id],
        input: { notch: one, disc: size, words, compensation, chordError },
      };
    }),
  run: ({ notch: one, disc, words, compensation, chordError }, { kernel }) => {
    const { outer } = shapeOf(one, disc.radius);
    const title = `witness notch strip ${one.id}`;
    const room = { x: 0, y: 0, width: disc.lower + disc.upper - 4, height: one.width - 0.4 };
    const solid = kernel.scope((scope) => {
      const prism = notchPrism(scope, one, disc, { beyond: 0, ends: 0, chordError });
      const middle = translation(outer, 0, (disc.upper - disc.lower) / 2);
      const onFace = compose(notchToMold(one), middle, onOuterFace);
      const label = labelCutter(scope, words, room);
      const body = label ? scope.subtract(prism, [scope.move(label, onFace, one.id)], one.id) : prism;
      const toPrint = compose(translation(0, 0, outer), layDown, inverse(notchToMold(one)));
      return asSolid(scope, body, toPrint, {
        id: one.id,
        title,
        role: 'notch',
        subjects: [one.id],
        compensation,
      });
    });
    return { solids: [solid], findings: labelFindings(one.id, words, room, title) };
  },
});

type Size = Pick<Disc, 'radius' | 'lower' | 'upper'>;

const notchToMold = ({ angleRad }: Notch): Matrix4 => rotation('z', angleRad);

/** Cutter of the notch in both halves: the same outline, past the rim and past both outer faces. */
export const notchCutter = (scope: Scope, one: Notch, disc: Size, chordError: number): Body =>
  notchPrism(scope, one, disc, { beyond: overlap, ends: overlap, chordError });

interface Reach {
  readonly beyond: number;
  readonly ends: number;
  readonly chordError: number;
}

function notchPrism(scope: Scope, one: Notch, disc: Size, { beyond, ends, chordError }: Reach): Body {
  const outline = notchOutline(shapeOf(one, disc.radius), beyond, chordError);
  const prism = scope.extrude([outline], -disc.lower - ends, disc.upper + ends, one.id);
  return scope.move(prism, notchToMold(one), one.id);
}

function shapeOf(one: Notch, radius: number): NotchShape {
  const shape = notchShape(one, radius);
  if (!shape) throw new KernelFault(one.id, 'the notch is wider than the rim allows for its depth');
  return shape;
}
