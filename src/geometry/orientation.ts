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

/** Steps of 2^-20 mm: solids handed out have their coordinates in them. */
const steps = 2 ** 20;
/** Farther out than this many steps (256 mm) differences have more than two digits of 15 bits. */
const farthest = 2 ** 28;
const digit = 2 ** 15;

/** Digits of the determinant, the lowest first: sums of products of three digits, under 2^53 and so exact. */
const digits = new Float64Array(4);

function exactly(p: Float32Array, i: number, j: number, k: number, l: number): number {
  if (!(inSteps(p, i) && inSteps(p, j) && inSteps(p, k) && inSteps(p, l))) return inWhole(p, i, j, k, l);
  digits.fill(0);
  const ax = (p[i] - p[l]) * steps;
  const ay = (p[i + 1] - p[l + 1]) * steps;
  const bx = (p[j] - p[l]) * steps;
  const by = (p[j + 1] - p[l + 1]) * steps;
  const cx = (p[k] - p[l]) * steps;
  const cy = (p[k + 1] - p[l + 1]) * steps;
  addDigits((p[i + 2] - p[l + 2]) * steps, bx, cy, cx, by);
  addDigits((p[j + 2] - p[l + 2]) * steps, cx, ay, ax, cy);
  addDigits((p[k + 2] - p[l + 2]) * steps, ax, by, bx, ay);
  let carry = 0;
  let isNone = true;
  for (let at = 0; at < 3; at++) {
    const sum = digits[at] + carry;
    carry = Math.floor(sum / digit);
    isNone &&= sum === carry * digit;
  }
  const top = digits[3] + carry;
  if (top === 0) return isNone ? 0 : 1;
  return top > 0 ? 1 : -1;
}

const inSteps = (p: Float32Array, i: number): boolean =>
  isStep(p[i] * steps) && isStep(p[i + 1] * steps) && isStep(p[i + 2] * steps);

const isStep = (value: number): boolean => Math.floor(value) === value && Math.abs(value) <= farthest;

/** Adds z (a b - c d) to the digits, each number as high * 2^15 + low. */
function addDigits(z: number, a: number, b: number, c: number, d: number): void {
  const highZ = Math.floor(z / digit);
  const highA = Math.floor(a / digit);
  const highB = Math.floor(b / digit);
  const highC = Math.floor(c / digit);
  const highD = Math.floor(d / digit);
  const lowZ = z - highZ * digit;
  const lowA = a - highA * digit;
  const lowB = b - highB * digit;
  const lowC = c - highC * digit;
  const lowD = d - highD * digit;
  const high = highA * highB - highC * highD;
  const middle = highA * lowB + lowA * highB - highC * lowD - lowC * highD;
  const low = lowA * lowB - lowC * lowD;
  digits[0] += lowZ * low;
  digits[1] += lowZ * middle + highZ * low;
  digits[2] += lowZ * high + highZ * middle;
  digits[3] += highZ * high;
}

function inWhole(p: Float32Array, i: number, j: number, k: number, l: number): number {
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
