import type { Point2, TriangleMesh } from '../../geometry/index.ts';
import type { Channel } from '../mold.ts';
import { heightAt, type PartingSurface } from '../parting-surface.ts';
import type { Lump } from './lump.ts';

/** Points across; odd, so that the deepest is one of them. */
const across = 9;
/** Slope of a vent's sides from the vertical, so that rubber and castings leave them. Common practice. */
const ventFlank = Math.tan(Math.PI / 9);

/** How much narrower a vent's floor is than its mouth on each side, mm. */
const flankOf = ({ width, depth }: Pick<Channel, 'width' | 'depth'>): number =>
  Math.min(depth * ventFlank, width / 4);

/**
 * A straight channel as it is cut, in the mold frame: half-round (half an ellipse `width` by 2 `depth`) for gates, a
 * trapezoid with flanks of 20 degrees for vents, hung from the parting surface point by point along its path, so that it is
 * everywhere as deep as the plan says however the surface slopes. It stands out over the surface by `past` mm: what is
 * cut with it wants some, what is looked at none. Closed and oriented outward; for no length, width or depth undefined.
 */
export function channelMesh(
  channel: Channel,
  surface: PartingSurface,
  past: number,
): TriangleMesh | undefined {
  const { from, to, width, depth, half } = channel;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (!(length > 0 && width > 0 && depth > 0)) return undefined;
  const along = [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const;
  const stations = surface.flat ? 1 : Math.max(1, Math.ceil(length / Math.max(2 * surface.cell, 0.25)));
  const profile = sectionDepths(channel);
  const down = half === 'lower' ? -1 : 1;
  const ring = 2 * profile.length;
  const positions: number[] = [];
  for (let station = 0; station <= stations; station++) {
    const s = (length * station) / stations;
    const at = ([offset]: readonly [number, number]): readonly [number, number] => [
      from[0] + along[0] * s - along[1] * offset,
      from[1] + along[1] * s + along[0] * offset,
    ];
    for (const point of profile) {
      const [x, y] = at(point);
      positions.push(x, y, heightAt(surface, x, y) + down * point[1]);
    }
    for (const point of [...profile].reverse()) {
      const [x, y] = at(point);
      positions.push(x, y, heightAt(surface, x, y) - down * past);
    }
  }
  return { positions: Float32Array.from(positions), triangles: sweptFaces(stations, ring, half === 'lower') };
}

/** [offset across, depth under the surface], from the right side of the path to its left. */
function sectionDepths({ kind, width, depth }: Channel): readonly (readonly [number, number])[] {
  if (kind === 'vent') {
    const flank = flankOf({ width, depth });
    return [
      [-width / 2, 0],
      [flank - width / 2, depth],
      [width / 2 - flank, depth],
      [width / 2, 0],
    ];
  }
  return Array.from({ length: across }, (_, i) => {
    const angle = Math.PI * (i / (across - 1));
    return [-Math.cos(angle) * (width / 2), Math.sin(angle) * depth] as const;
  });
}

/** Side and end faces of rings joined one after another; ring points right to left below, then back above. */
function sweptFaces(stations: number, ring: number, mirrored: boolean): Uint32Array {
  const faces: [number, number, number][] = [];
  for (let station = 0; station < stations; station++) {
    for (let k = 0; k < ring; k++) {
      const a = station * ring + k;
      const b = station * ring + ((k + 1) % ring);
      faces.push([a, a + ring, b], [b, a + ring, b + ring]);
    }
  }
  const last = stations * ring;
  // Strips between the lower and the upper chain close the ends.
  for (let k = 0; k < ring / 2 - 1; k++) {
    const quad = [k, k + 1, ring - 2 - k, ring - 1 - k] as const;
    faces.push([quad[0], quad[1], quad[2]], [quad[0], quad[2], quad[3]]);
    const [a, b, c, d] = quad.map((index) => index + last);
    faces.push([a, c, b], [a, d, c]);
  }
  return Uint32Array.from(mirrored ? faces.flatMap(([a, b, c]) => [a, c, b]) : faces.flat());
}

/** Its four corners seen from above, mold frame, counter-clockwise from the right of its beginning. */
export function channelCorners({ from, to, width }: Pick<Channel, 'from' | 'to' | 'width'>): Point2[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [x, y] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length].map((one) => (one * width) / 2);
  return [
    [from[0] + y, from[1] - x],
    [to[0] + y, to[1] - x],
    [to[0] - y, to[1] + x],
    [from[0] - y, from[1] + x],
  ];
}

/** Area across a channel: half an ellipse for gates, a trapezoid for vents. */
export const channelSection = ({ kind, width, depth }: Channel): number =>
  kind === 'gate' ? (Math.PI / 4) * width * depth : depth * (width - flankOf({ width, depth }));

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

/** What is empty in the half, or full of metal, between its ends. */
export function channelLump(channel: Channel, surface: PartingSurface): Lump {
  const { from, to, depth, half } = channel;
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const middle = channel.kind === 'gate' ? (4 * depth) / (3 * Math.PI) : depth / 2;
  const z = heightAt(surface, x, y) + (half === 'lower' ? -middle : middle);
  return { volume: channelSection(channel) * channelReach(channel).length, x, y, z };
}
