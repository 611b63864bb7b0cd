import { moveMesh, type Point2, rotation, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import type { Process, Tab } from '../mold.ts';
import { lofted } from './lofted.ts';
import { bandBeyond, type Lump, polar } from './lump.ts';
import { overlap } from './overlap.ts';

/** Thickness of the wedge's inner edge as a share of its height: a blade's start, yet nothing to break off. */
const edgeShare = 0.25;
// A tab as wide as its chord allows ends on the rim itself; rounding must not call that outside.
const slack = 1e-9;

/** Whether a tab or notch of this width has its outer corners on the disc, `inset` inside the rim. */
export const fitsOnRim = (
  { width, inset = 0 }: { readonly width: number; readonly inset?: number },
  discRadius: number,
): boolean => width / 2 <= discRadius - inset + slack;

/** Distance of a tab's flat outer face from the axis: its corners are `inset` inside the rim, or the can would not close. */
export const tabFace = ({ inset, width }: Pick<Tab, 'inset' | 'width'>, discRadius: number): number =>
  Math.sqrt(Math.max(0, (discRadius - inset) ** 2 - (width / 2) ** 2));

/** Half the thickness of its inner edge, mm, which is a full round: the radius of all its outer edges too. */
export const tabRounding = ({ height }: Pick<Tab, 'height'>): number => (height * edgeShare) / 2;

/** Its four corners seen from above, mold frame, counter-clockwise from the outer face's right. */
export function tabCorners(tab: Pick<Tab, 'angleRad' | 'width' | 'length' | 'inset'>, discRadius: number) {
  const [half, outer] = [tab.width / 2, tabFace(tab, discRadius)];
  const [c, s] = [Math.cos(tab.angleRad), Math.sin(tab.angleRad)];
  const at = (out: number, side: number): Point2 => [out * c - side * s, out * s + side * c];
  return [at(outer, -half), at(outer, half), at(outer - tab.length, half), at(outer - tab.length, -half)];
}

/**
 * Outline (x outward, z) of the wedge as it is cut, at angle 0, counter-clockwise: its full height at the outer face.
 * In rigid halves, which nothing is cut free from, it runs out through the rim. Of the loose tab that shapes rubber the
 * edges are rounded within it.
 */
export function tabOutline(tab: Tab, discRadius: number, process: Process): Point2[] {
  const [outer, edge, top] = [tabFace(tab, discRadius), tabRounding(tab), tab.height / 2];
  const inner = outer - tab.length;
  const beyond: Point2[] =
    process === 'rigid'
      ? [
          [discRadius + overlap, -top],
          [discRadius + overlap, top],
        ]
      : [];
  return [[inner, -edge], [outer, -top], ...beyond, [outer, top], [inner, edge]];
}

/** What a tab takes out of both halves, as a mesh to measure walls to. */
export function tabMesh(tab: Tab, discRadius: number, process: Process): TriangleMesh {
  const outline = tabOutline(tab, discRadius, process);
  const section = (y: number): Vec3[] => outline.map(([x, z]) => [x, y, z]);
  return moveMesh(lofted([section(-tab.width / 2), section(tab.width / 2)]), rotation('z', tab.angleRad));
}

/**
 * The plain wedge, a quarter as high at its inner edge: V = w l (h + h / 4) / 2, its centroid 0.6 l from that edge. That
 * is the recess rigid halves are cut with. The loose tab that shapes rubber has rounded edges and a slot besides and is
 * up to a tenth smaller, so that here a little more rubber is missing than in fact.
 */
export function tabLumps(tab: Tab, discRadius: number, process: Process): Lump[] {
  // Wider than its chord it is no tab; `layout.outside-disc` says so.
  if (!fitsOnRim(tab, discRadius)) return [];
  const { angleRad, width, length, height } = tab;
  const outer = tabFace(tab, discRadius);
  const wedge = {
    volume: (width * length * height * (1 + edgeShare)) / 2,
    ...polar(outer - 0.4 * length, angleRad),
    z: 0,
  };
  if (process !== 'rigid') return [wedge];
  const beyond = bandBeyond(discRadius, width, outer);
  return [wedge, { volume: beyond * height, ...polar((outer + discRadius) / 2, angleRad), z: 0 }];
}
