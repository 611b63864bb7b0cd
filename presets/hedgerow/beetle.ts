import type { TriangleMesh, Vec3 } from '../../src/geometry/index.ts';
import type { Kernel } from '../../src/kernel/index.ts';
import { Clay } from '../shaping/clay.ts';
import { lineThrough } from '../shaping/curve.ts';
import { ellipsoid, type Shape, strand } from '../shaping/shapes.ts';

const sides = [1, -1] as const;

/** Legs on the left side: hip, knee, heel, toe. The knees arch high; only the toes come down. */
const legs: readonly (readonly Vec3[])[] = [
  [
    [4.6, 2.4, 2.6],
    [7.6, 6.2, 5.2],
    [10.6, 8.2, 2],
    [12.6, 8.6, 0.6],
  ],
  [
    [1.2, 3.4, 2.5],
    [1.6, 8.2, 5.4],
    [0.6, 11.2, 2],
    [-0.2, 12.8, 0.6],
  ],
  [
    [-2.6, 3.4, 2.5],
    [-6, 7.8, 5.4],
    [-9.4, 10.4, 2],
    [-11.4, 11.4, 0.6],
  ],
];

const feeler: readonly Vec3[] = [
  [8.6, 1, 3.8],
  [11, 2.6, 5],
  [13, 4.8, 4.8],
  [13.4, 6.6, 4.2],
];

const jaw: readonly Vec3[] = [
  [9, 0.9, 3],
  [11, 2.2, 2.9],
  [12.2, 1, 2.9],
];

const mirrored = (line: readonly Vec3[], side: 1 | -1): Vec3[] => line.map(([x, y, z]) => [x, y * side, z]);

const both = (line: readonly Vec3[], radius: (t: number) => number, steps = 6): Shape[] =>
  sides.flatMap((side) => strand(lineThrough(mirrored(line, side), steps), radius));

/** Height of the wing cases' top over x and y; they are the ellipsoid of `body` below. */
const caseTop = (x: number, y: number): number =>
  3.4 + 3.4 * Math.sqrt(Math.max(0, 1 - ((x + 2.6) / 7.8) ** 2 - (y / 5.1) ** 2));

/** Furrows along the wing cases. `share` is how far out, as a share of the width. */
function furrow(share: number, side: 1 | -1): Vec3[] {
  return Array.from({ length: 17 }, (_, i) => {
    const x = -9.2 + (12 * i) / 16;
    const width = 5.1 * Math.sqrt(Math.max(0, 1 - ((x + 2.6) / 7.8) ** 2));
    const y = side * share * width;
    return [x, y, caseTop(x, y) + 0.12];
  });
}

/** A beetle on thin arching legs, about 25 x 26 x 7 mm, standing. */
export function beetle(kernel: Kernel): TriangleMesh {
  const furrows = sides.flatMap((side) => [0.3, 0.55, 0.78].map((share) => furrow(share, side)));
  const seam = furrow(0, 1);
  return new Clay([-12.5, -13.8, -0.4], [14.4, 13.8, 8], 0.28)
    .add([ellipsoid([-2.6, 0, 3.4], [7.8, 5.1, 3.4]), ellipsoid([-2, 0, 2.8], [7, 4.2, 2.4])], 0)
    .carve(
      furrows.flatMap((line) => strand(line, () => 0.32)),
      0.3,
    )
    .carve(
      strand(seam, () => 0.42),
      0.3,
    )
    .add([ellipsoid([5.2, 0, 3.5], [3.1, 3.9, 2.7])], 0.25)
    .add([ellipsoid([8.2, 0, 3.2], [1.9, 2.2, 1.7])], 0.25)
    .add(
      sides.map((side) => ellipsoid([8.7, 1.75 * side, 3.9], [0.75, 0.7, 0.75])),
      0.15,
    )
    .add(
      both(jaw, (t) => 0.68 - 0.2 * t),
      0.3,
    )
    .add(
      both(feeler, (t) => (t > 0.8 ? 0.7 : 0.5)),
      0.3,
    )
    .add(
      legs.flatMap((leg) => both(leg, (t) => 0.66 - 0.2 * t - 0.1 * Math.cos(6 * Math.PI * t))),
      0.5,
    )
    .toMesh(kernel, 'beetle');
}
