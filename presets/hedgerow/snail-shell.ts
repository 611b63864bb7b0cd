import type { TriangleMesh, Vec3 } from '../../src/geometry/index.ts';
import type { Kernel } from '../../src/kernel/index.ts';
import { Clay } from '../shaping/clay.ts';
import { ellipsoid, strand } from '../shaping/shapes.ts';
import { axesAlong, unit } from '../shaping/vector.ts';

const turns = 3.6;
const stepsPerTurn = 56;

/** How much smaller the whorl is `turn` turns before the mouth: a logarithmic spiral. */
const shrinkAt = (turn: number): number => 0.53 ** turn;

/** Middle of the tube `turn` turns before the mouth; the spire stands up along z. */
function spiral(turn: number): Vec3 {
  const s = shrinkAt(turn);
  const angle = -2 * Math.PI * turn;
  return [7.1 * s * Math.cos(angle), 7.1 * s * Math.sin(angle), 4.9 + 6.2 * (1 - s)];
}

/** Ribs of growth across the tube, closer towards the tip. */
const tubeAt = (turn: number): number =>
  4.75 * shrinkAt(turn) * (1 + 0.028 * Math.sin(2 * Math.PI * 17 * turn)) + 0.12;

/** A snail shell lying on its underside, spire up, mouth open to the front: about 24 x 20 x 12 mm. */
export function snailShell(kernel: Kernel): TriangleMesh {
  const count = Math.round(turns * stepsPerTurn);
  const line = Array.from({ length: count + 1 }, (_, i) => spiral((turns * i) / count));
  const mouth = spiral(0);
  const out = unit([spiral(0)[0] - spiral(0.01)[0], spiral(0)[1] - spiral(0.01)[1], 0]);
  const axes = axesAlong(out, [0, 0, 1]);
  const lip = Array.from({ length: 41 }, (_, i): Vec3 => {
    const a = (2 * Math.PI * i) / 40;
    const [p, q] = [4.4 * Math.cos(a), 4.4 * Math.sin(a)];
    return [mouth[0] + p * axes[1][0] + out[0] * 0.9, mouth[1] + p * axes[1][1] + out[1] * 0.9, mouth[2] + q];
  });
  const ahead = (mm: number): Vec3 => [mouth[0] + out[0] * mm, mouth[1] + out[1] * mm, mouth[2]];
  // The older whorls come last: they stand in the mouth's inner wall.
  const last = Math.round(0.55 * stepsPerTurn);
  const tube = (from: number, to: number) =>
    strand(line.slice(from, to + 1), (t) => tubeAt((turns * (from + t * (to - from))) / count));
  return new Clay([-13, -13, -1], [14, 13, 14], 0.32)
    .add(tube(0, last))
    .carve([ellipsoid(ahead(8.2), [8, 9, 9], axes)], 0.3)
    .carve([ellipsoid(ahead(0.6), [3.6, 3.7, 3.7], axes)], 0.3)
    .add(
      strand(lip, () => 0.85),
      0.5,
    )
    .add(tube(last - 8, count), 0.35)
    .add([ellipsoid([0, 0, spiral(turns)[2] - 0.4], [1.1, 1.1, 0.9])], 0.8)
    .toMesh(kernel, 'snail shell');
}
