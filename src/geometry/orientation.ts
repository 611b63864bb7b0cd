/** Greatest rounding error of the determinant below, as a share of its terms' sizes (Shewchuk 1997). */
const errorShare = (7 + 56 * 2 ** -53) * 2 ** -53;

/** 2^149: every float32 number times this is whole. */
const whole = 2 ** 149;

/**
 * On which side of the plane through a, b, c the point d lies: six times the volume of the four, over 0 below the
 * plane seen so that a, b, c run counter-clockwise, exactly 0 in it. Points of a list of float32 positions, by number.
 * The sign is exact: what float64 leaves open is worked out in whole numbers (J. R. Shewchuk, "Adaptive Precision
 * Floating-Point Arithmetic and Fast Robust Geometric Predicates", 1997).
 */
export function orientation(p: Float32Array, a: number, b: number, c: number, d: number): number {
  const [i, j, k, l] = [a * 3, b * 3, c * 3, d * 3];
  const ax = p[i] - p[l];
  const ay = p[i + 1] - p[l + 1];
  const az = p[i + 2] - p[l + 2];
  const bx = p[j] - p[l];
  const by = p[j + 1] - p[l + 1];
  const bz = p[j + 2] - p[l + 2];
  const cx = p[k] - p[l];
  const cy = p[k + 1] - p[l + 1];
  const cz = p[k + 2] - p[l + 2];
  const bxcy = bx * cy;
  const cxby = cx * by;
  const cxay = cx * ay;
  const axcy = ax * cy;
  const axby = ax * by;
  const bxay = bx * ay;
  const volume = az * (bxcy - cxby) + bz * (cxay - axcy) + cz * (axby - bxay);
  const size =
    (Math.abs(bxcy) + Math.abs(cxby)) * Math.abs(az) +
    (Math.abs(cxay) + Math.abs(axcy)) * Math.abs(bz) +
    (Math.abs(axby) + Math.abs(bxay)) * Math.abs(cz);
  return Math.abs(volume) > errorShare * size || size === 0 ? volume : exactly(p, i, j, k, l);
}

function exactly(p: Float32Array, i: number, j: number, k: number, l: number): number {
  const [ax, ay, az] = wholeFrom(p, i, l);
  const [bx, by, bz] = wholeFrom(p, j, l);
  const [cx, cy, cz] = wholeFrom(p, k, l);
  const volume = az * (bx * cy - cx * by) + bz * (cx * ay - ax * cy) + cz * (ax * by - bx * ay);
  return volume > 0n ? 1 : volume < 0n ? -1 : 0;
}

const wholeFrom = (p: Float32Array, i: number, l: number): readonly [bigint, bigint, bigint] => [
  BigInt(p[i] * whole) - BigInt(p[l] * whole),
  BigInt(p[i + 1] * whole) - BigInt(p[l + 1] * whole),
  BigInt(p[i + 2] * whole) - BigInt(p[l + 2] * whole),
];
