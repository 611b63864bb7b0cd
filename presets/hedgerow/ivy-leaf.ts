import type { TriangleMesh, Vec3 } from '../../src/geometry/index.ts';
import type { Kernel } from '../../src/kernel/index.ts';
import { Clay } from '../shaping/clay.ts';
import { bend, lineThrough, type Point2 } from '../shaping/curve.ts';
import { strand } from '../shaping/shapes.ts';
import { sheet } from '../shaping/sheet.ts';

const half = 0.65;

/** Tips of the lobes on the left side, from the middle one to the one beside the stalk; the stalk sits at 0, 0. */
const tips: readonly Point2[] = [
  [18, 0.4],
  [8.4, 11.8],
  [-4.8, 10.2],
];

/** From each tip round the hollow to the next, and back to the stalk: Bezier handles. */
const hollows: readonly (readonly [Point2, Point2])[] = [
  [
    [11.5, 3.6],
    [6, 4.4],
  ],
  [
    [4.4, 9.8],
    [0.2, 6.4],
  ],
  [
    [-6.6, 5],
    [-4.4, 0.8],
  ],
];

const base: Point2 = [0.6, 0.2];

function outline(): Point2[] {
  const stops = [...tips, base];
  const left = hollows.flatMap(([a, b], i) => bend([stops[i], a, b, stops[i + 1]], 24));
  const right = [...left, base].reverse().map(([x, y]): Point2 => [x, -y]);
  return [...left, base, ...right];
}

/** The blade is domed, its tips hang, and it is creased a little along the middle vein. */
const middle = (x: number, y: number): number =>
  3.6 -
  0.0095 * (x * x + 1.5 * y * y) +
  0.6 * Math.sin(0.3 * x) -
  0.5 / (1 + y * y) +
  0.25 * Math.cos(0.9 * y);

const onTop = (x: number, y: number, over = 0.66): Vec3 => [x, y, middle(x, y) + over];

/** A vein from the stalk towards a tip, bent sideways by `bow` mm, ending at `share` of the way. */
function vein([x, y]: Point2, bow: number, share: number, from: Point2 = [0, 0]): Vec3[] {
  return Array.from({ length: 15 }, (_, i) => {
    const t = (i / 14) * share;
    const side = bow * Math.sin(Math.PI * t);
    const length = Math.hypot(x - from[0], y - from[1]);
    return onTop(
      from[0] + (x - from[0]) * t - ((y - from[1]) / length) * side,
      from[1] + (y - from[1]) * t + ((x - from[0]) / length) * side,
    );
  });
}

const sides = [1, -1] as const;

function veins(): Vec3[][] {
  const main = [vein([18, 0], 0, 0.9)];
  const side = sides.flatMap((s) => [
    vein([8.4, 11.8 * s], -0.4 * s, 0.84),
    vein([-4.8, 10.2 * s], -0.3 * s, 0.8),
  ]);
  return [...main, ...side];
}

/** Thinner veins that leave the main ones. */
function twigs(): Vec3[][] {
  return sides.flatMap((s) => [
    vein([9.4, 2.6 * s], 0.2 * s, 1, [5.2, 0]),
    vein([12.8, 1.9 * s], 0.15 * s, 1, [9.2, 0]),
    vein([6.7, 6.6 * s], 0.1 * s, 1, [3.9, 5.2 * s]),
    vein([2.9, 7 * s], -0.1 * s, 1, [2.2, 3.2 * s]),
    vein([-4.6, 5.4 * s], 0.3 * s, 1, [-1.7, 3.7 * s]),
  ]);
}

/** The stalk arches down behind the blade and ends in a thicker foot. */
const stalk: readonly Vec3[] = [
  [2, 0, middle(2, 0) - 0.1],
  [-0.5, 0, middle(0, 0) + 0.1],
  [-4, 0.5, 3.9],
  [-8, 1.8, 2.9],
  [-12, 4, 1.6],
];

/** An ivy leaf, five lobes, about 31 x 24 x 6 mm, its face up. */
export function ivyLeaf(kernel: Kernel): TriangleMesh {
  return new Clay([-13.5, -12.5, -1.5], [18.5, 12.5, 6], 0.27)
    .add([sheet({ outline: outline(), middle, half })])
    .add(
      veins().flatMap((line) => strand(line, (t) => 0.55 - 0.22 * t)),
      0.6,
    )
    .add(
      twigs().flatMap((line) => strand(line, (t) => 0.4 - 0.1 * t)),
      0.5,
    )
    .add(
      strand(lineThrough(stalk, 8), (t) => 0.8 + 0.5 * Math.max(0, t - 0.75)),
      0.8,
    )
    .toMesh(kernel, 'ivy leaf');
}
