import {
  type Body,
  compose,
  inverse,
  KernelFault,
  type Matrix4,
  rotation,
  type Scope,
  translation,
} from '../kernel/index.ts';
import {
  type Disc,
  type Notch,
  type NotchShape,
  notchOutline,
  notchShape,
  type Part,
  part,
} from '../mold/index.ts';
import { asSolid } from './as-solid.ts';
import { withoutSpot } from './without-spots.ts';

const overlap = 1;
/** Quarter turn about y, outward becomes downward: the strip lies on the face that was at the rim. */
const layDown: Matrix4 = [0, 0, -1, 0, 0, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1];

/**
 * The witness notch as a strip to be stood against the can's wall, through both halves, inside the rim. The edge that
 * stands in rubber is rounded; those at the can's wall and its ends stay sharp, or rubber would creep in behind them.
 */
export const notch: Part = part({
  id: 'notch',
  title: 'witness notches',
  scope: 'whole',
  processes: ['rubber'],
  jobs: ({ notches, disc, fixture }) =>
    notches.map((one) => {
      const { radius, lower, upper } = disc;
      const { compensation, chordError } = fixture;
      const size = { radius, lower, upper };
      return { subject: one.id, input: { notch: withoutSpot(one), disc: size, compensation, chordError } };
    }),
  run: ({ notch: one, disc, compensation, chordError }, { kernel }) =>
    kernel.scope((scope) => {
      const { outer } = shapeOf(one, disc.radius);
      const body = notchPrism(scope, one, disc, { beyond: 0, ends: 0, chordError });
      const toPrint = compose(translation(0, 0, outer), layDown, inverse(notchToMold(one)));
      return [
        asSolid(scope, body, toPrint, {
          id: one.id,
          title: `witness notch strip ${one.id}`,
          role: 'notch',
          subjects: [one.id],
          compensation,
        }),
      ];
    }),
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
