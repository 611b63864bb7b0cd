import type { MeshData } from './measure.ts';

export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

type Point = readonly [number, number];

// Relative: a point that close to the circle counts as on it.
const slack = 1e-12;

/**
 * The smallest circle round all vertices seen from above (x, y; z is ignored), mm. Takes a mesh or x, y, z triples.
 * Welzl's recursion with the farthest point first (Gaertner, Fast and robust smallest enclosing balls, ESA 1999):
 * each round adds the farthest point outside and solves for at most four points exactly, so that a million points
 * cost some ten passes, in the same order every time. No points: a RangeError.
 */
export function smallestCircle(of: MeshData | ArrayLike<number>): Circle {
  const p = 'positions' in of ? of.positions : of;
  if (p.length < 3) throw new RangeError('smallestCircle: no points');
  let support: Point[] = [[p[0], p[1]]];
  let circle: Circle = { x: p[0], y: p[1], radius: 0 };
  for (;;) {
    const far = farthest(p, circle);
    const next = withPoint(support, far);
    // The radius can only grow; where rounding keeps it from growing, every point is on or within the circle.
    if (!(next.circle.radius > circle.radius * (1 + slack))) return circle;
    circle = next.circle;
    support = next.support;
  }
}

function farthest(p: ArrayLike<number>, { x, y }: Circle): Point {
  let most = -1;
  let at = 0;
  for (let i = 0; i < p.length; i += 3) {
    const dx = p[i] - x;
    const dy = p[i + 1] - y;
    const square = dx * dx + dy * dy;
    if (square > most) {
      most = square;
      at = i;
    }
  }
  return [p[at], p[at + 1]];
}

interface Supported {
  readonly circle: Circle;
  readonly support: Point[];
}

/** Smallest circle round the support and one more point, which lies on it: through one or two of the others. */
function withPoint(support: readonly Point[], extra: Point): Supported {
  const all = [...support, extra];
  const candidates: Supported[] = support.map((a) => ({ circle: throughTwo(a, extra), support: [a, extra] }));
  for (let i = 0; i < support.length; i++) {
    for (let j = i + 1; j < support.length; j++) {
      const circle = throughThree(support[i], support[j], extra);
      if (circle) candidates.push({ circle, support: [support[i], support[j], extra] });
    }
  }
  const holding = candidates.filter(({ circle }) => all.every((point) => holds(circle, point)));
  return (holding.length > 0 ? holding : candidates).reduce((best, one) =>
    one.circle.radius < best.circle.radius ? one : best,
  );
}

const holds = ({ x, y, radius }: Circle, [px, py]: Point): boolean =>
  Math.hypot(px - x, py - y) <= radius * (1 + 1e-10);

const throughTwo = ([ax, ay]: Point, [bx, by]: Point): Circle => ({
  x: (ax + bx) / 2,
  y: (ay + by) / 2,
  radius: Math.hypot(bx - ax, by - ay) / 2,
});

/** Circumcircle; none where the three are on one line. */
function throughThree([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): Circle | undefined {
  const ux = bx - ax;
  const uy = by - ay;
  const vx = cx - ax;
  const vy = cy - ay;
  const twice = 2 * (ux * vy - uy * vx);
  const u = ux * ux + uy * uy;
  const v = vx * vx + vy * vy;
  if (Math.abs(twice) <= 1e-14 * (u + v)) return undefined;
  const x = (vy * u - uy * v) / twice;
  const y = (ux * v - vx * u) / twice;
  return { x: ax + x, y: ay + y, radius: Math.hypot(x, y) };
}
