import { determinant, movePoint } from '../kernel/index.ts';
import {
  type Boss,
  type Channel,
  fitsOnRim,
  heightAt,
  type Mold,
  type NotchShape,
  notchShape,
  type Placement,
  roomBetween,
  topOfHexagon,
} from '../mold/index.ts';
import type { PointMass } from '../physics/index.ts';
import { nutBore } from '../tables/index.ts';

/** Densities in kg/m3 of what turns. */
export interface Densities {
  readonly half: number;
  readonly alloy: number;
  /** Of loose bosses that are made and not bought. */
  readonly fixture: number;
}

/** Density of cap nuts, kg/m3: plain steel (from memory). */
const steelKgM3 = 7850;

interface Lump {
  /** mm3. */
  readonly volume: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** mm3 times kg/m3 is 1e-6 g. */
const weigh = ({ volume, x, y, z }: Lump, densityKgM3: number): PointMass => ({
  massG: volume * densityKgM3 * 1e-6,
  x,
  y,
  z,
});

/** The imprint of a placement in the mold frame: volume by the matrix's determinant, centroid moved by it. */
export function imprintOf(mold: Mold, { master: id, matrix }: Placement): Lump {
  const master = mold.masters.find((one) => one.id === id);
  if (!master) throw new Error(`a placement names the master ${id}, which the mold does not hold`);
  const [x, y, z] = movePoint(matrix, master.measures.centroid);
  return { volume: master.measures.volume * Math.abs(determinant(matrix)), x, y, z };
}

/** What a filled cavity weighs more than the half's material it takes the place of. */
export function metalInCavity(mold: Mold, placement: Placement, densities: Densities): PointMass {
  const metal = metalAlone(mold, placement, densities);
  return { ...metal, massG: metal.massG - weigh(imprintOf(mold, placement), densities.half).massG };
}

/** The metal alone that a misrun leaves out: weighed where the plan knows the mass of a casting, else by volume. */
export function metalAlone(mold: Mold, placement: Placement, { alloy }: Densities): PointMass {
  const metal = weigh(imprintOf(mold, placement), alloy);
  const weighed = mold.masters.find(({ id }) => id === placement.master)?.massG;
  return weighed === undefined ? metal : { ...metal, massG: weighed };
}

/**
 * Bosses, tabs, notches and channels as they differ from a plain disc of the half's material; what is round about
 * the axis differs nowhere. Closed forms of the shapes the solids are made by; tab recesses and notches are empty,
 * gates full of metal, vents empty, bores of nuts as dense as the half.
 */
export function fittings(mold: Mold, densities: Densities): PointMass[] {
  const { half, alloy, fixture } = densities;
  return [
    ...setBosses(mold).flatMap((boss) => {
      // The head of a rigid boss is one with the half and fills its socket.
      if (boss.kind !== 'cap nut')
        return mold.process === 'rigid' ? [] : bossLumps(boss).map((lump) => weigh(lump, fixture - half));
      return bossLumps(boss).map((lump) => weigh(lump, steelKgM3 - half));
    }),
    ...mold.tabs.flatMap((tab) => tabLumps(tab, mold).map((lump) => weigh(lump, -half))),
    ...mold.notches.flatMap((notch) => notchLumps(notch, mold).map((lump) => weigh(lump, -half))),
    ...mold.channels.map((channel) =>
      weigh(channelLump(channel, mold), channel.kind === 'gate' ? alloy - half : -half),
    ),
  ];
}

/** Those that can be set: beside the disc, or in another boss, there is none; each has a stop of its own. */
const setBosses = ({ bosses, disc }: Mold): Boss[] =>
  bosses.filter(
    (boss, i) =>
      Math.hypot(boss.x, boss.y) < disc.radius &&
      bosses.slice(0, i).every((earlier) => roomBetween(boss, earlier) >= 0),
  );

/** Root and head; of a cap nut the hexagon, collar and half ball (DIN 1587: r = d_k / 2), less the bore. */
export function bossLumps(boss: Boss): Lump[] {
  const { x, y, headRadius: r, headHeight: h, rootDepth: depth } = boss;
  const at = (volume: number, z: number): Lump => ({ volume, x, y, z });
  if (boss.kind === 'hexagon') return hexagonLumps(boss);
  if (boss.kind === 'cone')
    return [at(Math.PI * r * r * depth, -depth / 2), at((Math.PI * r * r * h) / 3, h / 4)];
  const rootArea = boss.kind === 'cap nut' ? (Math.sqrt(3) / 2) * boss.acrossFlats ** 2 : Math.PI * r * r;
  const rise = Math.min(h, r);
  const collar = h - rise;
  const ball = (r * r + rise * rise) / (2 * rise);
  // Cap of height a of a ball R: V = pi a^2 (3 R - a) / 3, centroid 3 (2 R - a)^2 / (4 (3 R - a)) from its center.
  const capVolume = (Math.PI * rise * rise * (3 * ball - rise)) / 3;
  const capCenter = (3 * (2 * ball - rise) ** 2) / (4 * (3 * ball - rise)) - (ball - rise);
  const solid = [
    at(rootArea * depth, -depth / 2),
    at(Math.PI * r * r * collar, collar / 2),
    at(capVolume, collar + capCenter),
  ];
  const bore = boss.kind === 'cap nut' ? nutBore(boss.size) : undefined;
  return bore
    ? [...solid, at((-Math.PI / 4) * bore.diameter ** 2 * bore.depth, bore.depth / 2 - depth)]
    : solid;
}

/** A prism, A = (sqrt 3 / 2) s^2, and a frustum on it from s to t: V = A_s h (s^2 + s t + t^2) / (3 s^2). */
function hexagonLumps(boss: Boss): Lump[] {
  const { x, y, headHeight: h, acrossFlats: s, rootDepth: depth } = boss;
  const t = 2 * topOfHexagon(boss);
  const sum = s * s + s * t + t * t;
  const unit = Math.sqrt(3) / 2;
  return [
    { volume: unit * s * s * depth, x, y, z: -depth / 2 },
    { volume: (unit * h * sum) / 3, x, y, z: (h * (s * s + 2 * s * t + 3 * t * t)) / (4 * sum) },
  ];
}

/**
 * The plain wedge, a quarter as high at its inner edge: V = w l (h + h / 4) / 2, its centroid 0.6 l from that edge. That
 * is the recess rigid halves are cut with. The loose tab that shapes rubber has rounded edges and a slot besides and is
 * up to a tenth smaller, so that here a little more rubber is missing than in fact.
 */
export function tabLumps(
  { angleRad, width, length, height, inset }: Mold['tabs'][number],
  mold: Mold,
): Lump[] {
  const { radius } = mold.disc;
  // Wider than its chord it is no tab; `layout.outside-disc` says so.
  if (!fitsOnRim({ width, inset }, radius)) return [];
  const outer = Math.sqrt((radius - inset) ** 2 - (width / 2) ** 2);
  const wedge = {
    volume: (width * length * height * 1.25) / 2,
    ...polar(outer - 0.4 * length, angleRad),
    z: 0,
  };
  if (mold.process !== 'rigid') return [wedge];
  // In rigid halves the recess runs on through the rim.
  const beyond = bandBeyond(radius, width, outer);
  return [wedge, { volume: beyond * height, ...polar((outer + radius) / 2, angleRad), z: 0 }];
}

/** A V with its rounded root through both halves, and the sliver between its chord and the rim. */
function notchLumps(notch: Mold['notches'][number], { disc }: Mold): Lump[] {
  const { radius, lower, upper } = disc;
  const shape = notchShape(notch, radius);
  if (!shape) return [];
  const parts = [
    ...notchAreas(shape),
    { area: bandBeyond(radius, notch.width, shape.outer), x: (shape.outer + radius) / 2 },
  ];
  const area = parts.reduce((sum, part) => sum + part.area, 0);
  const center = parts.reduce((sum, part) => sum + part.area * part.x, 0) / area;
  return [{ volume: area * (lower + upper), ...polar(center, notch.angleRad), z: (upper - lower) / 2 }];
}

/**
 * Areas and centroids about the root's middle: the sector that is the root (centroid 2 r sin(a) / (3 a) from it), a
 * right triangle to where each flank touches it, and the triangle to the mouth.
 */
function notchAreas({ tip, outer, halfMouth, rootRadius: r, touchRad }: NotchShape) {
  const middle = tip + r;
  const half = Math.PI - touchRad;
  const flank = Math.sqrt((outer - middle) ** 2 + halfMouth ** 2 - r ** 2);
  return [
    { area: half * r ** 2, x: middle - (2 * r * Math.sin(half)) / (3 * half) },
    { area: r * flank, x: (middle + (middle + r * Math.cos(touchRad)) + outer) / 3 },
    { area: halfMouth * (outer - middle), x: (middle + 2 * outer) / 3 },
  ];
}

/** Area between a line at `from` from the axis and the rim, over a width across the radius. */
const bandBeyond = (radius: number, width: number, from: number): number =>
  (width / 2) * Math.sqrt(radius ** 2 - (width / 2) ** 2) +
  radius ** 2 * Math.asin(width / 2 / radius) -
  from * width;

/** tan 20 degrees: how the sides of vents lean. */
const ventFlank = Math.tan(Math.PI / 9);

/** Area across a channel: half an ellipse for gates, a trapezoid for vents. */
export const channelSection = ({ kind, width, depth }: Channel): number =>
  kind === 'gate' ? (Math.PI / 4) * width * depth : depth * (width - Math.min(depth * ventFlank, width / 4));

/**
 * The part of a channel that is neither in the cavity nor in the well nor past the rim: half its width less at each
 * end. Radii of both ends, nearer first.
 */
export function channelReach({ from, to, width }: Channel): {
  readonly length: number;
  readonly ends: readonly [number, number];
} {
  const length = Math.max(0, Math.hypot(to[0] - from[0], to[1] - from[1]) - width);
  const near = Math.hypot(...from) + width / 2;
  return { length, ends: [near, Math.max(near, Math.hypot(...to) - width / 2)] };
}

function channelLump(channel: Channel, { parting }: Mold): Lump {
  const { from, to, depth, half } = channel;
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const middle = channel.kind === 'gate' ? (4 * depth) / (3 * Math.PI) : depth / 2;
  const z = heightAt(parting, x, y) + (half === 'lower' ? -middle : middle);
  return { volume: channelSection(channel) * channelReach(channel).length, x, y, z };
}

const polar = (radius: number, angleRad: number): { readonly x: number; readonly y: number } => ({
  x: radius * Math.cos(angleRad),
  y: radius * Math.sin(angleRad),
});
