import { type TriangleMesh, toRadians, type Vec3 } from '../../src/geometry/index.ts';
import type { Kernel } from '../../src/kernel/index.ts';
import { Clay } from '../shaping/clay.ts';
import type { Point2 } from '../shaping/curve.ts';
import { ellipsoid, plate, ring, type Shape, strand } from '../shaping/shapes.ts';
import { along, axesAlong, between } from '../shaping/vector.ts';

const face = 2.2;
const wreath = 7.6;
const holeAngles = [45, 135, 225, 315].map((degrees) => toRadians(degrees));

/** A place in the wreath: `s` mm along its circle from the angle `start`, `out` mm outward from it. */
const inWreath = (start: number, s: number, out: number): Point2 => {
  const angle = start + s / wreath;
  return [(wreath + out) * Math.cos(angle), (wreath + out) * Math.sin(angle)];
};

const leafLength = 9.6;

const stem = 1.4;

/** Half the thickness of a leaf's spine at `s` mm along it; it begins with the stem. */
const thick = (s: number): number =>
  0.45 + 0.35 * Math.sin((Math.PI * Math.min(leafLength, Math.max(0, s))) / leafLength);

/** Lobes of an oak leaf: how far along it their middle is, how far out they reach, mm, and how wide they are. */
const lobes = [
  [0.22, 1.5, 1.05],
  [0.47, 2.2, 1.25],
  [0.71, 1.9, 1.15],
] as const;

/** An oak leaf bent along the wreath: a spine, three round lobes a side, a round end, veins on top. */
function oakLeaf(start: number): { blade: Shape[]; veins: Shape[] } {
  const at = (s: number, out: number, over: number): Vec3 => [...inWreath(start, s, out), face + over];
  const every = (from: number, to: number): number[] =>
    Array.from({ length: 17 }, (_, i) => from + ((to - from) * i) / 16);
  const spine = every(-stem, leafLength).map((s) => at(s, 0, 0.15));
  const rib = every(-stem, leafLength - 0.4).map((s) => at(s, 0, (s < 0 ? -0.1 : 0.1) + thick(s)));
  const sides = lobes.flatMap(([t, reach, width]) =>
    [1, -1].map((side) => ({ s: leafLength * t, reach: reach * side, width })),
  );
  const blade = sides.map(({ s, reach, width }) => {
    const [root, tip] = [at(s - 0.5, 0, 0.2), at(s + 0.7, reach, 0.2)];
    return ellipsoid(between(root, tip, 0.6), [1.5, width, 0.7], axesAlong(along(tip, root, -1), [0, 0, 1]));
  });
  const end = along(at(leafLength, 0, 0.2), at(leafLength - 1, 0, 0.2), -1);
  return {
    blade: [
      ...strand(spine, (t) => thick(t * (leafLength + stem) - stem)),
      ...blade,
      ellipsoid(at(leafLength - 0.3, 0, 0.2), [1.5, 1.25, 0.75], axesAlong(end, [0, 0, 1])),
    ],
    veins: [
      ...strand(rib, (t) => 0.4 - 0.1 * t),
      ...sides.flatMap(({ s, reach }) =>
        strand([at(s - 0.9, 0, 0.85), at(s + 0.5, 0.8 * reach, 0.75)], () => 0.3),
      ),
    ],
  };
}

/** An acorn lying across the wreath: cup, nut with a point, short stalk. */
function acorn(angle: number): { cup: Shape; nut: Shape[] } {
  const out: Vec3 = [Math.cos(angle), Math.sin(angle), 0];
  const at = (radius: number, z: number): Vec3 => [out[0] * radius, out[1] * radius, z];
  const axes = axesAlong(out, [0, 0, 1]);
  return {
    cup: ellipsoid(at(wreath - 1.5, face + 0.1), [1.3, 1.75, 1.35], axes),
    nut: [
      ellipsoid(at(wreath + 0.4, face + 0.1), [2.3, 1.35, 1.1], axes),
      ...strand([at(wreath + 2.2, face + 0.2), at(wreath + 3, face + 0.25)], () => 0.3),
    ],
  };
}

/** A round button with a raised rim, four holes, and a wreath of three oak leaves and three acorns: 24 mm across. */
export function oakButton(kernel: Kernel): TriangleMesh {
  const thirds = [0, 1, 2].map((i) => (2 * Math.PI * i) / 3);
  const leaves = thirds.map((angle) => oakLeaf(angle + 0.42));
  const acorns = thirds.map(acorn);
  const holes = holeAngles.map(
    (a): Shape => plate([1.75 * Math.cos(a), 1.75 * Math.sin(a)], 0.95, -3, 9, 0.05),
  );
  return new Clay([-12.2, -12.2, -0.5], [12.2, 12.2, 4.5], 0.28)
    .add([plate([0, 0], 11.6, 0, face, 0.9)])
    .add([ring(11.1, 0.95, face - 0.1)], 0.3)
    .add([ring(4.1, 0.5, face)], 0.3)
    .carve([ellipsoid([0, 0, face + 1.6], [4.2, 4.2, 2.2])], 0.3)
    .add(
      leaves.flatMap(({ blade }) => blade),
      0.3,
    )
    .add(
      leaves.flatMap(({ veins }) => veins),
      0.25,
    )
    .add(
      acorns.flatMap(({ nut }) => nut),
      0.2,
    )
    .add(
      acorns.map(({ cup }) => cup),
      0.1,
    )
    .carve(holes, 0.3)
    .toMesh(kernel, 'oak button');
}
