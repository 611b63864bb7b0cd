import type { Point2 } from '../../kernel/index.ts';

/** Affine matrix a b c d e f as SVG writes it: x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix2 = readonly [number, number, number, number, number, number];

export const identity2: Matrix2 = [1, 0, 0, 1, 0, 0];

export const movePoint2 = ([a, b, c, d, e, f]: Matrix2, [x, y]: Point2): Point2 => [
  a * x + c * y + e,
  b * x + d * y + f,
];

/** `inner` first, then `outer`. */
export const compose2 = (outer: Matrix2, inner: Matrix2): Matrix2 => {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
};

/** The most any direction is stretched: the greater singular value. */
export const stretch = ([a, b, c, d]: Matrix2): number => {
  const [p, q] = [a * a + b * b + c * c + d * d, 2 * Math.abs(a * d - b * c)];
  return (Math.sqrt(Math.max(0, p + q)) + Math.sqrt(Math.max(0, p - q))) / 2;
};

const degrees = Math.PI / 180;

/** An SVG transform list; undefined where it makes no sense. */
export function parseTransform(text: string): Matrix2 | undefined {
  let matrix = identity2;
  const rest = text.replace(/([a-zA-Z]+)\s*\(([^)]*)\)[\s,]*/g, (_, name: string, list: string) => {
    const values = list
      .trim()
      .split(/[\s,]+/)
      .filter((part) => part !== '')
      .map(Number);
    const step = values.every(Number.isFinite) ? single(name, values) : undefined;
    if (!step) return '?';
    matrix = compose2(matrix, step);
    return '';
  });
  return rest.trim() === '' && matrix.every(Number.isFinite) ? matrix : undefined;
}

function single(name: string, v: readonly number[]): Matrix2 | undefined {
  const n = v.length;
  if (name === 'matrix' && n === 6) return [v[0], v[1], v[2], v[3], v[4], v[5]];
  if (name === 'translate' && (n === 1 || n === 2)) return [1, 0, 0, 1, v[0], n === 2 ? v[1] : 0];
  if (name === 'scale' && (n === 1 || n === 2)) return [v[0], 0, 0, n === 2 ? v[1] : v[0], 0, 0];
  if (name === 'skewX' && n === 1) return [1, 0, Math.tan(v[0] * degrees), 1, 0, 0];
  if (name === 'skewY' && n === 1) return [1, Math.tan(v[0] * degrees), 0, 1, 0, 0];
  if (name === 'rotate' && (n === 1 || n === 3)) {
    const [c, s] = [Math.cos(v[0] * degrees), Math.sin(v[0] * degrees)];
    const turn: Matrix2 = [c, s, -s, c, 0, 0];
    if (n === 1) return turn;
    return compose2([1, 0, 0, 1, v[1], v[2]], compose2(turn, [1, 0, 0, 1, -v[1], -v[2]]));
  }
  return undefined;
}
