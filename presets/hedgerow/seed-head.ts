import type { TriangleMesh, Vec3 } from '../../src/geometry/index.ts';
import type { Kernel } from '../../src/kernel/index.ts';
import { Clay } from '../shaping/clay.ts';
import { lineThrough } from '../shaping/curve.ts';
import { ellipsoid, type Shape, strand } from '../shaping/shapes.ts';
import { type Axes, along, axesAlong, unit } from '../shaping/vector.ts';

const ribs = 10;
const heart: Vec3 = [9.6, 2.2, 5.2];
const axes: Axes = axesAlong(unit([1, 0.28, -0.1]), [0, 0, 1]);
const [length, width, up] = axes;

/** A point beside the capsule's own axis: `s` mm along it, `r` mm off it towards the angle `a`. */
const off = (s: number, r: number, a: number): Vec3 =>
  along(along(along(heart, length, s), width, r * Math.cos(a)), up, r * Math.sin(a));

const [long, wide] = [5.6, 4.4];

const round = Array.from({ length: ribs }, (_, i) => (2 * Math.PI * i) / ribs);

/** Ribs along the capsule, just over its skin. */
const capsuleRibs = (): Shape[] =>
  round.flatMap((a) => {
    const line = Array.from({ length: 15 }, (_, i) => {
      const s = -4.9 + (9.8 * i) / 14;
      return off(s, wide * Math.sqrt(1 - (s / long) ** 2) - 0.08, a);
    });
    return strand(line, () => 0.42);
  });

/** The lid: a scalloped plate with raised rays, and a dip between them. */
function lid(): { plate: Shape[]; rays: Shape[] } {
  const at = long + 0.7;
  const scallops = round.map((a) => ellipsoid(off(at + 0.15, 2.5, a), [0.65, 1.15, 1.15], axes));
  return {
    plate: [ellipsoid(off(at, 0, 0), [0.75, 3, 3], axes), ...scallops],
    rays: round.flatMap((a) => strand([off(at + 0.7, 0, 0), off(at + 0.62, 3.1, a)], () => 0.34)),
  };
}

/** The stalk: flat at its foot, then a bow with nothing under it, up to the capsule. */
const stalk: readonly Vec3[] = [
  [-21, -3.4, 0.9],
  [-16.5, -3.6, 1.6],
  [-11, -2.6, 5],
  [-5, -0.9, 7.4],
  [0, 0.1, 7],
  [4.6, 0.9, 5.8],
  [6, 1.2, 5.6],
];

/** A ripe poppy head on a bent stalk, lying on its side: about 39 x 11 x 10 mm. */
export function seedHead(kernel: Kernel): TriangleMesh {
  const { plate, rays } = lid();
  return new Clay([-22.5, -6, -0.4], [17.8, 9, 11], 0.32)
    .add([ellipsoid(heart, [long, wide, wide], axes)])
    .add(capsuleRibs(), 0.45)
    .add(
      strand([off(long - 1.2, 0, 0), off(long + 0.6, 0, 0)], () => 1.9),
      0.5,
    )
    .add(plate, 0.3)
    .add(rays, 0.25)
    .add([ellipsoid(off(-long - 0.1, 0, 0), [0.6, 1.7, 1.7], axes)], 0.4)
    .add(
      strand(lineThrough(stalk, 10), (t) => 1.05 - 0.25 * Math.sin(Math.PI * t)),
      0.6,
    )
    .toMesh(kernel, 'seed head');
}
