import { cross, type TriangleMesh, type Vec3 } from '../../src/geometry/index.ts';
import type { Kernel } from '../../src/kernel/index.ts';
import { Clay } from '../shaping/clay.ts';
import { ellipsoid, type Shape, strand } from '../shaping/shapes.ts';
import { type Axes, along, axesAlong, unit } from '../shaping/vector.ts';

const flat = 25;
const lastCoil = 0.62 * Math.PI;
const points = 96;
const leaflets = 10;

/** The midrib: it lies along x with a slight sideways bow, then curls up and back over itself. t from 0 to 1. */
function midrib(t: number): Vec3 {
  const split = 0.66;
  const bow = (x: number): number => 1.6 * Math.sin((Math.PI * (x + 14)) / 34);
  if (t <= split) {
    const x = -14 + (flat * t) / split;
    return [x, bow(x), 1.4 + 0.5 * Math.sin((Math.PI * t) / split)];
  }
  const turn = (lastCoil * (t - split)) / (1 - split);
  const radius = 4.4 - 1.5 * (turn / lastCoil);
  const x = flat - 14 + radius * Math.sin(turn);
  return [x, bow(flat - 14) + 0.3 * turn, 1.4 + 4.4 - radius * Math.cos(turn)];
}

function directionAt(t: number): Vec3 {
  const [a, b] = [midrib(Math.max(0, t - 0.01)), midrib(Math.min(1, t + 0.01))];
  return unit(along(b, a, -1));
}

/** Length, width and up of the frond at t; "up" is its face, which turns inward in the coil. */
function axesAt(t: number): Axes {
  const length = directionAt(t);
  const width: Vec3 = [0, 1, 0];
  return [length, width, unit(cross(length, width))];
}

/** Longest a third of the way up, small in the coil. */
const reachAt = (t: number): number => 8 * Math.sin(Math.PI * Math.min(1, 0.24 + 0.78 * t)) ** 1.3 + 1.5;

/** One leaflet: a flat blade with three lobes a side and a rib on its face. */
function leaflet(t: number, side: 1 | -1): { blade: Shape[]; rib: Shape[] } {
  const root = midrib(t);
  const [length, width, up] = axesAt(t);
  const reach = reachAt(t);
  const out = unit(along(along(along([0, 0, 0], width, side), length, 0.5), up, -0.08));
  const [first, across, over] = axesAlong(out, up);
  const at = (s: number, off = 0, high = 0): Vec3 =>
    along(along(along(root, first, reach * s), across, off), over, high);
  const wide = 0.45 + 0.075 * reach;
  const lobe = (s: number, k: number): Shape => {
    const lean = unit(along(first, across, 0.8 * k));
    return ellipsoid(at(s, 0.62 * k * wide), [0.8 * wide, 0.42 * wide, 0.48], axesAlong(lean, over));
  };
  const lobes = reach > 3 ? [0.36, 0.54, 0.72].flatMap((s) => [lobe(s, 1), lobe(s, -1)]) : [];
  return {
    blade: [ellipsoid(at(0.48), [0.54 * reach, 0.86 * wide, 0.6], [first, across, over]), ...lobes],
    rib: strand([at(0, 0, 0.45), at(0.45, 0, 0.55), at(0.85, 0, 0.4)], (s) => 0.38 - 0.1 * s),
  };
}

/** A fern frond lying flat, its tip curled up over it: about 36 x 19 x 9 mm, face up. */
export function fernFrond(kernel: Kernel): TriangleMesh {
  const line = Array.from({ length: points + 1 }, (_, i) => midrib(i / points));
  const pairs = Array.from({ length: leaflets }, (_, i) => 0.08 + 0.9 * (i / (leaflets - 1)) ** 0.9).flatMap(
    (t) => [leaflet(t, 1), leaflet(t, -1)],
  );
  const stalk: Vec3[] = [
    [-20, -1.4, 1.4],
    [-17, -0.7, 1.4],
    [-14, 0, 1.4],
  ];
  return new Clay([-22, -11, -1], [18, 13, 11], 0.27)
    .add(pairs.flatMap(({ blade }) => blade))
    .add(
      pairs.flatMap(({ rib }) => rib),
      0.35,
    )
    .add([...strand(stalk, (t) => 1.3 - 0.3 * t), ...strand(line, (t) => 1 - 0.45 * t)], 0.5)
    .toMesh(kernel, 'fern frond');
}
