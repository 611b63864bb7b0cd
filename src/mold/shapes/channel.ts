import type { TriangleMesh } from '../../geometry/index.ts';
import type { Channel } from '../mold.ts';
import { heightAt, type PartingSurface } from '../parting-surface.ts';
import { isDrawn, isRing, type Leg, legsOf } from './channel-run.ts';
import { sectionPoints } from './channel-section.ts';

/**
 * A channel as it is cut, in the mold frame: its section hung from the parting surface point by point along its path, so that it is
 * everywhere as deep as the plan says however the surface slopes. It stands out over the surface by `past` mm: what is
 * cut with it wants some, what is looked at none. Closed and oriented outward; for no length, width or depth undefined.
 */
export function channelMesh(
  channel: Channel,
  surface: PartingSurface,
  past: number,
): TriangleMesh | undefined {
  if (!isDrawn(channel)) return undefined;
  const down = channel.half === 'lower' ? -1 : 1;
  const positions: number[] = [];
  const all = legsOf(channel.run).flatMap((leg, i) => ringsOf(leg, surface, i === 0));
  const round = isRing(channel.run);
  const rings = round ? all.slice(0, -1) : all;
  for (const { x, y, nx, ny, width, depth } of rings) {
    const profile = sectionPoints(channel.section, { width, depth });
    for (const [offset, under] of profile) {
      const [px, py] = [x + nx * offset, y + ny * offset];
      positions.push(px, py, heightAt(surface, px, py) + down * under);
    }
    for (const [offset] of [...profile].reverse()) {
      const [px, py] = [x + nx * offset, y + ny * offset];
      positions.push(px, py, heightAt(surface, px, py) - down * past);
    }
  }
  const ring = positions.length / 3 / rings.length;
  const faces = [
    ...sweptFaces(rings.length, ring, round),
    ...(round ? [] : endFaces(rings.length - 1, ring)),
  ];
  return {
    positions: Float32Array.from(positions),
    triangles: Uint32Array.from(
      channel.half === 'lower' ? faces.flatMap(([a, b, c]) => [a, c, b]) : faces.flat(),
    ),
  };
}

interface SectionPlace {
  readonly x: number;
  readonly y: number;
  /** Left of the path. */
  readonly nx: number;
  readonly ny: number;
  readonly width: number;
  readonly depth: number;
}

/** Sections along a leg: at its ends, and on a curved surface as close as its grid; the first only where none is there. */
function ringsOf(leg: Leg, surface: PartingSurface, first: boolean): SectionPlace[] {
  const { from, to, length, along, across } = leg;
  const count = surface.flat ? 1 : Math.max(1, Math.ceil(length / Math.max(2 * surface.cell, 0.25)));
  const rings: SectionPlace[] = [];
  for (let k = first ? 0 : 1; k <= count; k++) {
    const s = (length * k) / count;
    const t = k / count;
    const [nx, ny] = k === 0 ? across[0] : k === count ? across[1] : ([-along[1], along[0]] as const);
    rings.push({
      x: from.at[0] + along[0] * s,
      y: from.at[1] + along[1] * s,
      nx,
      ny,
      width: from.width + (to.width - from.width) * t,
      depth: from.depth + (to.depth - from.depth) * t,
    });
  }
  return rings;
}

type Face = [number, number, number];

/** Side faces of sections joined one after another, round to the first where they close; a section points right to left below, then back above. */
function sweptFaces(count: number, ring: number, round: boolean): Face[] {
  const faces: Face[] = [];
  for (let station = 0; station < (round ? count : count - 1); station++) {
    const [here, next] = [station, (station + 1) % count].map((one) => one * ring);
    for (let k = 0; k < ring; k++) {
      const [a, b] = [k, (k + 1) % ring];
      faces.push([here + a, next + a, here + b], [here + b, next + a, next + b]);
    }
  }
  return faces;
}

/** Strips between the lower and the upper chain close the ends. */
function endFaces(stations: number, ring: number): Face[] {
  const faces: Face[] = [];
  const last = stations * ring;
  for (let k = 0; k < ring / 2 - 1; k++) {
    const quad = [k, k + 1, ring - 2 - k, ring - 1 - k] as const;
    faces.push([quad[0], quad[1], quad[2]], [quad[0], quad[2], quad[3]]);
    const [a, b, c, d] = quad.map((index) => index + last);
    faces.push([a, c, b], [a, d, c]);
  }
  return faces;
}
