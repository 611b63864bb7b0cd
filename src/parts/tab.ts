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
import { type Part, part, type Tab } from '../mold/index.ts';
import { asSolid } from './as-solid.ts';
import { withoutSpot } from './without-spots.ts';

/** Thickness of the wedge's inner edge as a share of its height: a blade's start, yet nothing to break off. */
const edgeShare = 0.25;
/** y becomes z, z becomes -y: an outline drawn in (x, y) stands up. */
const standUp: Matrix4 = [1, 0, 0, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 0, 0, 1];

/** The separating tab: a wedge laid in the parting line inside the rim. Lies on its side. */
export const tab: Part = part({
  id: 'tab',
  title: 'separating tabs',
  scope: 'whole',
  processes: ['rubber'],
  jobs: ({ tabs, disc }) =>
    tabs.map((one) => ({ subject: one.id, input: { tab: withoutSpot(one), radius: disc.radius } })),
  run: ({ tab: one, radius }, { kernel }) =>
    kernel.scope((scope) => [
      asSolid(scope, tabBody(scope, one, radius), tabToPrint(one), {
        id: one.id,
        title: `separating tab ${one.id}`,
        role: 'tab',
        subjects: [one.id],
      }),
    ]),
});

const tabToMold = ({ angleRad }: Tab): Matrix4 => compose(rotation('z', angleRad), standUp);

const tabToPrint = (one: Tab): Matrix4 => compose(translation(0, 0, one.width / 2), inverse(tabToMold(one)));

/** Distance of the tab's flat outer face from the axis: its corners are `inset` inside the rim. */
function tabEdge({ id, inset, width, length }: Tab, radius: number): number {
  const outer = Math.sqrt((radius - inset) ** 2 - (width / 2) ** 2);
  if (!(outer > length)) throw new KernelFault(id, 'the tab is wider or longer than the disc allows');
  return outer;
}

/** The tab in the mold frame: height h at its outer face, h / 4 at its inner edge; V = w l (h + h / 4) / 2. */
export function tabBody(scope: Scope, one: Tab, radius: number): Body {
  return standing(scope, one, wedge(one, tabEdge(one, radius)));
}

/** Cutter of its recess. In rigid halves, which nothing is cut free from, it runs out through the rim. */
export function tabRecess(scope: Scope, one: Tab, radius: number, throughRim: boolean): Body {
  const [a, b, c, d] = wedge(one, tabEdge(one, radius));
  if (!throughRim) return standing(scope, one, [a, b, c, d]);
  const past = radius + 1;
  return standing(scope, one, [a, b, [past, b[1]], [past, c[1]], c, d]);
}

type Point = readonly [number, number];

/** Counter-clockwise in (x, z). */
function wedge({ length, height }: Tab, outer: number): readonly [Point, Point, Point, Point] {
  const edge = (height * edgeShare) / 2;
  const inner = outer - length;
  return [
    [inner, -edge],
    [outer, -height / 2],
    [outer, height / 2],
    [inner, edge],
  ];
}

const standing = (scope: Scope, one: Tab, outline: readonly Point[]): Body =>
  scope.move(scope.extrude([outline], -one.width / 2, one.width / 2, one.id), tabToMold(one), one.id);
