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
import { type Disc, type Notch, type Part, part } from '../mold/index.ts';
import { asSolid } from './as-solid.ts';
import { withoutSpot } from './without-spots.ts';

const overlap = 1;
/** Quarter turn about y, outward becomes downward: the strip lies on the face that was at the rim. */
const layDown: Matrix4 = [0, 0, -1, 0, 0, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1];

/** The witness notch as a strip to be stood against the can's wall, through both halves, inside the rim. */
export const notch: Part = part({
  id: 'notch',
  title: 'witness notches',
  scope: 'whole',
  processes: ['rubber'],
  jobs: ({ notches, disc, fixture }) =>
    notches.map((one) => {
      const { radius, lower, upper } = disc;
      const { compensation } = fixture;
      const size = { radius, lower, upper };
      return { subject: one.id, input: { notch: withoutSpot(one), disc: size, compensation } };
    }),
  run: ({ notch: one, disc, compensation }, { kernel }) =>
    kernel.scope((scope) => {
      const outer = notchFace(one, disc.radius);
      const body = notchPrism(scope, one, disc, { outer, beyond: 0, ends: 0 });
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

/** Distance from the axis of the chord across the notch's mouth. */
function notchFace({ id, width, depth }: Notch, radius: number): number {
  const outer = Math.sqrt(radius ** 2 - (width / 2) ** 2);
  if (!(outer > radius - depth && depth < radius)) {
    throw new KernelFault(id, 'the notch is wider than the rim allows for its depth');
  }
  return outer;
}

/** Cutter of the notch in both halves: the same V, past the rim and past both outer faces. */
export const notchCutter = (scope: Scope, one: Notch, disc: Size): Body =>
  notchPrism(scope, one, disc, { outer: notchFace(one, disc.radius), beyond: overlap, ends: overlap });

function notchPrism(
  scope: Scope,
  one: Notch,
  { radius, lower, upper }: Size,
  { outer, beyond, ends }: { readonly outer: number; readonly beyond: number; readonly ends: number },
): Body {
  const tip = radius - one.depth;
  const past = outer + beyond;
  // The flanks go on straight past the rim.
  const half = ((one.width / 2) * (past - tip)) / (outer - tip);
  const outline = [
    [tip, 0],
    [past, -half],
    [past, half],
  ] as const;
  return scope.move(scope.extrude([outline], -lower - ends, upper + ends, one.id), notchToMold(one), one.id);
}
