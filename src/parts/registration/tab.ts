import { compose, inverse, type Matrix4, rotation, translation, type Vec3 } from '../../geometry/index.ts';
import { type Body, KernelFault, type Scope } from '../../kernel/index.ts';
import {
  type Part,
  type Process,
  part,
  type Tab,
  tabFace,
  tabOutline,
  tabRounding,
} from '../../mold/index.ts';
import { asSolid } from '../making/index.ts';

/** y becomes z, z becomes -y: an outline drawn in (x, y) stands up. */
const standUp: Matrix4 = [1, 0, 0, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 0, 0, 1];

/**
 * The separating tab: a rounded wedge with a blade's slot, laid in the parting line inside the rim. Lies on its side. It
 * has neither label nor index mark: its broad faces have to slip out of the rubber, and its outer face is lower than
 * letters.
 */
export const tab: Part = part({
  id: 'tab',
  title: 'separating tabs',
  processes: ['rubber'],
  units: ({ tabs, disc, fixture }) =>
    tabs.map((one) => ({
      subject: one.id,
      about: [one.id],
      input: { tab: one, radius: disc.radius, compensation: fixture.compensation },
    })),
  run: ({ tab: one, radius, compensation }, { kernel }) =>
    kernel.scope((scope) => [
      asSolid(scope, tabBody(scope, one, radius), tabToPrint(one), {
        id: one.id,
        title: `separating tab ${one.id}`,
        role: 'tab',
        subjects: [one.id],
        compensation,
      }),
    ]),
});

const tabToMold = ({ angleRad }: Tab): Matrix4 => compose(rotation('z', angleRad), standUp);

const tabToPrint = (one: Tab): Matrix4 => compose(translation(0, 0, one.width / 2), inverse(tabToMold(one)));

/** Distance of the tab's flat outer face from the axis. */
function tabEdge(one: Tab, radius: number): number {
  const outer = tabFace(one, radius);
  if (!(outer > one.length)) throw new KernelFault(one.id, 'the tab is wider or longer than the disc allows');
  return outer;
}

/** Sides of a whole turn of a rounding: its chords stay within 0.01 mm at the usual radii. */
const roundingSides = 32;
/** The blade's slot in the outer face: shares of the tab's width and length. Common practice, no published source. */
const slot = { width: 0.6, length: 0.2 } as const;

/**
 * The tab in the mold frame: height h at its outer face, h / 4 at its inner edge, all edges that meet rubber rounded
 * by h / 8; in the middle of its outer face a slot h / 4 high for the blade that pries the halves apart. A core less
 * its slot, grown by a ball: done for each of its convex pieces, which is the same and many times quicker.
 */
function tabBody(scope: Scope, one: Tab, radius: number): Body {
  const r = tabRounding(one);
  const pieces = corePieces(one, tabEdge(one, radius), r).map((corners) =>
    scope.roundedHull(corners, r, roundingSides, one.id),
  );
  return scope.move(scope.unite(pieces, one.id), tabToMold(one), one.id);
}

/** Corners (x, height, across) of the convex pieces of the core: behind the slot, beside it, over and under it. */
function corePieces(one: Tab, outer: number, r: number): Vec3[][] {
  const wedgeCore = wedgeInside(one, outer, r);
  const [[near, low], [far, high]] = [wedgeCore[3], wedgeCore[2]];
  const flank = (x: number): number => low + ((high - low) * (x - near)) / (far - near);
  const slotHalf = 2 * r;
  const from = outer - slot.length * one.length - r;
  const over = Math.max(from, near + ((slotHalf - low) * (far - near)) / (high - low));
  const [beside, end] = [(slot.width * one.width) / 2 + r, one.width / 2 - r];
  const prism = (outline: readonly Point[], left: number, right: number): Vec3[] =>
    outline.flatMap(([x, y]): Vec3[] => [
      [x, y, left],
      [x, y, right],
    ]);
  const across = (start: number, stop: number): readonly Point[] => [
    [start, -flank(start)],
    [stop, -flank(stop)],
    [stop, flank(stop)],
    [start, flank(start)],
  ];
  const lip = (side: number): readonly Point[] => [
    [over, side * slotHalf],
    [far, side * slotHalf],
    [far, side * flank(far)],
    [over, side * flank(over)],
  ];
  return [
    prism(across(near, from), -end, end),
    ...(beside < end ? [prism(across(near, far), beside, end), prism(across(near, far), -end, -beside)] : []),
    ...(over < far ? [prism(lip(1), -end, end), prism(lip(-1), -end, end)] : []),
  ];
}

/** The wedge less `by` all round; its flanks lean by (h - h / 4) / 2 over the length. */
function wedgeInside({ id, length, height, width }: Tab, outer: number, by: number): readonly Point[] {
  const edge = tabRounding({ height });
  const lean = (height / 2 - edge) / length;
  const [near, far] = [outer - length + by, outer - by];
  const flank = (x: number): number => edge + lean * (x - outer + length) - by * Math.hypot(1, lean);
  if (!(near < far && width > 2 * by && flank(near) > 0)) {
    throw new KernelFault(id, 'the tab is too short or too narrow for its height');
  }
  return [
    [near, -flank(near)],
    [far, -flank(far)],
    [far, flank(far)],
    [near, flank(near)],
  ];
}

/** Cutter of its recess, without roundings and slot. */
export function tabRecess(scope: Scope, one: Tab, radius: number, process: Process): Body {
  tabEdge(one, radius);
  const outline = tabOutline(one, radius, process);
  const recess = scope.extrude([outline], -one.width / 2, one.width / 2, one.id);
  return scope.move(recess, tabToMold(one), one.id);
}

type Point = readonly [number, number];
