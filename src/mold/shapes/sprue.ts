import { defaultChordError, type TriangleMesh } from '../../geometry/index.ts';
import { KernelFault } from '../../kernel/index.ts';
import type { Well } from '../../physics/index.ts';
import type { Sprue } from '../mold.ts';
import {
  capPoints,
  type RevolvedOutline,
  type RevolvedPoint,
  revolvedMesh,
  roundedCorner,
  turnedVolume,
} from './revolved.ts';
import type { Space } from './space.ts';

/** Radius of the shaft at height z above the parting plane. */
export const shaftRadius = (sprue: Pick<Sprue, 'holeRadius' | 'draftRad'>, z: number): number =>
  sprue.holeRadius - z * Math.tan(sprue.draftRad);

/** Radius of the well's wall where it meets the floor (before the fillet). */
export const wellFloorRadius = (sprue: Sprue): number =>
  sprue.wellRadius - sprue.wellDepth * Math.tan(sprue.draftRad);

/**
 * Outline of the center sprue form in the mold frame: dish in the underside (over the well's dome), well, fillet at
 * the well's floor, top of the well on the parting plane, fillet at the mouth of the hole, shaft through the upper
 * half (`upper` thick), grip. Throws KernelFault where the numbers leave no such body.
 */
export function sprueFormOutline(
  sprue: Sprue,
  upper: number,
  chordError = defaultChordError,
): RevolvedOutline {
  const { grip } = sprue;
  const top = topOfShaft(sprue, upper);
  return [
    ...wellPath(sprue, chordError),
    ...shaftPath(sprue, upper, chordError),
    ...(grip > 0 ? ([[top, upper + grip]] as const) : []),
    [0, upper + grip],
  ];
}

/** The spigot that holds shaft and well of a form in two pieces in line: half as wide as the hole, mm. */
export function spigotOf(sprue: Sprue, upper: number): { readonly radius: number; readonly height: number } {
  const radius = sprue.holeRadius / 2;
  return { radius, height: Math.min(radius, upper / 2) };
}

/** 45 degrees at the spigot's tip, mm: it is wider and higher than that. */
export const spigotChamfer = 0.5;

/** The lower of two pieces: the well, and the spigot over it. */
export function wellPieceOutline(
  sprue: Sprue,
  upper: number,
  chordError = defaultChordError,
): RevolvedOutline {
  const { radius, height } = spigotOf(sprue, upper);
  if (!(height > spigotChamfer && radius > spigotChamfer)) {
    throw new KernelFault('sprue form', 'the hole leaves no room for a spigot between two pieces');
  }
  return [
    ...wellPath(sprue, chordError),
    [radius, 0],
    [radius, height - spigotChamfer],
    [radius - spigotChamfer, height],
    [0, height],
  ];
}

/** Least wall round the hole of a spigot and over it, and round the well within the rim, mm. */
export const leastWall = 1;

/** The upper of two pieces: shaft and grip, with a hole for the spigot, larger by the clearance all round. */
export function shaftPieceOutline(
  sprue: Sprue,
  upper: number,
  clearance: number,
  chordError = defaultChordError,
): RevolvedOutline {
  const { radius, height } = spigotOf(sprue, upper);
  const path = shaftPath(sprue, upper, chordError);
  const top = topOfShaft(sprue, upper);
  const wide = radius + clearance;
  const deep = height + clearance;
  if (!(wide < top - leastWall))
    throw new KernelFault('sprue form', 'no wall is left round the hole of the spigot');
  return [
    [wide, 0],
    ...path,
    ...(sprue.grip > 0 ? ([[top, upper + sprue.grip]] as const) : []),
    [0, upper + sprue.grip],
    [0, deep],
    [wide, deep],
  ];
}

/** What the sprue form takes out of the lower half: the well, running on `past` mm over the parting plane. */
export function wellOutline(sprue: Sprue, past: number, chordError = defaultChordError): RevolvedOutline {
  return [...wellPath(sprue, chordError), [sprue.wellRadius, past], [0, past]];
}

/** What it takes out of the upper half: the shaft and its mouth, running on `past` mm beyond both faces. */
export function shaftOutline(
  sprue: Sprue,
  upper: number,
  past: number,
  chordError = defaultChordError,
): RevolvedOutline {
  const path = shaftPath(sprue, upper, chordError);
  const top = topOfShaft(sprue, upper);
  return [[0, -past], [path[0][0], -past], ...path, [top, upper + past], [0, upper + past]];
}

/** From the axis in the dish out to the well's edge on the parting plane. */
function wellPath(sprue: Sprue, chordError: number): RevolvedPoint[] {
  const { holeRadius, wellRadius, wellDepth, fillet } = sprue;
  const hasDome = sprue.domeHeight > 0 && sprue.domeRadius > 0;
  if (hasDome && sprue.domeHeight >= wellDepth) {
    throw new KernelFault('sprue form', 'the dome in the well must stay below the parting plane');
  }
  if (!(wellRadius > holeRadius && wellDepth > 0)) {
    throw new KernelFault('sprue form', 'the well must be wider than the hole and deeper than nothing');
  }
  const dish = hasDome ? dishPoints(sprue, chordError) : ([[0, -wellDepth]] as const);
  const floor: RevolvedPoint = [wellFloorRadius(sprue), -wellDepth];
  const edge: RevolvedPoint = [wellRadius, 0];
  return [
    ...dish,
    ...roundedCorner(dish[dish.length - 1], floor, edge, fillet, 'sprue form', chordError),
    edge,
  ];
}

/** From the rounded mouth of the hole on the parting plane up the shaft to the outer face. */
function shaftPath(sprue: Sprue, upper: number, chordError: number): RevolvedPoint[] {
  const { wellRadius, holeRadius, fillet } = sprue;
  const top: RevolvedPoint = [topOfShaft(sprue, upper), upper];
  return [...roundedCorner([wellRadius, 0], [holeRadius, 0], top, fillet, 'sprue form', chordError), top];
}

/** A cap of `domeRadius` across half its foot and `domeHeight` high: R = (a^2 + h^2) / 2h. */
function dishPoints({ domeRadius: a, domeHeight: h, wellDepth }: Sprue, chordError: number): RevolvedPoint[] {
  if (h > a) throw new KernelFault('sprue form', 'a dome higher than half its width cannot be pulled');
  return capPoints(a, h, -wellDepth, chordError).reverse();
}

function topOfShaft(sprue: Sprue, upper: number): number {
  const top = shaftRadius(sprue, upper);
  if (!(top > 0))
    throw new KernelFault('sprue form', 'with this draft the shaft runs out before the outer face');
  return top;
}

/**
 * Outline of the plug that keeps the pouring hole open: the shaft without the well, `clearance` smaller all round,
 * from the parting plane to the grip.
 */
export function plugOutline(sprue: Sprue, upper: number, clearance: number): RevolvedOutline {
  const foot = sprue.holeRadius - clearance;
  const top = topOfShaft(sprue, upper) - clearance;
  if (!(top > 0)) throw new KernelFault('plug', 'nothing is left of it beside its clearance');
  return [
    [0, 0],
    [foot, 0],
    [top, upper],
    ...(sprue.grip > 0 ? ([[top, upper + sprue.grip]] as const) : []),
    [0, upper + sprue.grip],
  ];
}

/** What halves have to cover of it: the well, since the pouring hole is meant to go through. */
export const sprueSpace = ({ wellDepth, wellRadius, holeRadius }: Sprue): Space => ({
  depth: wellDepth,
  height: 0,
  reach: Math.max(wellRadius, holeRadius),
});

/** Volume (mm3) of the form within the halves, without its grip. Throws as its outline does. */
export const sprueVolume = (sprue: Sprue, upper: number): number =>
  turnedVolume(sprueFormOutline({ ...sprue, grip: 0 }, upper));

/** Chord error of meshes that distances are measured to, mm. */
const meshChordError = 0.02;

/** Well and pouring hole in one. Throws KernelFault where the sprue's numbers leave no such body. */
export const sprueMesh = (sprue: Sprue, upper: number): TriangleMesh =>
  revolvedMesh(sprueFormOutline(sprue, upper, meshChordError), 0, 0);

/** The well and the pouring hole over it as room for metal; its small fillets are left out. */
export function metalWell(sprue: Sprue, upper: number): Well {
  const { holeRadius, wellRadius, wellDepth, draftRad, domeRadius: a, domeHeight: h } = sprue;
  const slope = Math.tan(draftRad);
  const [floor, top] = [wellFloorRadius(sprue), shaftRadius(sprue, upper)];
  const hasDome = a > 0 && h > 0;
  const ball = hasDome ? (a * a + h * h) / (2 * h) : 0;
  return {
    radius: wellRadius,
    corners: [...(hasDome ? [a] : []), floor, top, holeRadius].filter((r) => r > 0 && r < wellRadius),
    floorAt: (r) => {
      if (hasDome && r < a) return h - ball + Math.sqrt(ball * ball - r * r) - wellDepth;
      return r <= floor ? -wellDepth : -(wellRadius - r) / slope;
    },
    ceilingAt: (r) => {
      if (r > holeRadius) return 0;
      return r <= top ? upper : (holeRadius - r) / slope;
    },
  };
}
