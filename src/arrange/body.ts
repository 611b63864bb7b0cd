import type { Fixed } from './problem.ts';
import type { Shape } from './shape.ts';
import { farApart, nearest, type Way } from './way.ts';

/** One thing on the disc: pose, the slopes it gathers, and its gate. */
export interface Body {
  readonly shape: Shape;
  /** Its orbit and copy; -1 for what stays where it is. */
  readonly orbit: number;
  readonly copy: number;
  readonly fixed?: Fixed;
  readonly way?: Way | undefined;
  x: number;
  y: number;
  c: number;
  s: number;
  gx: number;
  gy: number;
  gt: number;
}

/** A slope of the sum at a point of a body. */
export function pushBody(body: Body, px: number, py: number, fx: number, fy: number): void {
  body.gx += fx;
  body.gy += fy;
  body.gt += (px - body.x) * fy - (py - body.y) * fx;
}

let [away, slopeX, slopeY] = [0, 0, 0];
/** Distance of a point from a body, and its slope in the mold frame, left in the variables above; false where it is far off. */
function look({ shape: { field }, x, y, c, s }: Body, px: number, py: number): boolean {
  const { x0, y0, cell, nx, ny, values } = field;
  const [dx, dy] = [px - x, py - y];
  const u = (c * dx + s * dy - x0) / cell;
  const v = (-s * dx + c * dy - y0) / cell;
  if (!(u >= 0 && v >= 0 && u < nx - 1 && v < ny - 1)) return false;
  const [i, j] = [u | 0, v | 0];
  const [a, b] = [u - i, v - j];
  const k = j * nx + i;
  const [d00, d10, d01, d11] = [values[k], values[k + 1], values[k + nx], values[k + nx + 1]];
  const low = d00 + a * (d10 - d00);
  const high = d01 + a * (d11 - d01);
  away = low + b * (high - low);
  const gu = ((d10 - d00) * (1 - b) + (d11 - d01) * b) / cell;
  const gv = (high - low) / cell;
  slopeX = c * gu - s * gv;
  slopeY = s * gu + c * gv;
  return true;
}

/** Slopes are those of the distance toward the point, so `-force` on the body. */
export function distanceAt(body: Body, px: number, py: number) {
  return look(body, px, py) ? { away, nx: slopeX, ny: slopeY } : undefined;
}

/** By the circles that hold them. */
export const mayMeet = (a: Body, b: Body, limit: number): boolean =>
  (a.x - b.x) ** 2 + (a.y - b.y) ** 2 < (a.shape.reach + b.shape.reach + limit) ** 2;

/** The circles of one against the distances of the other. */
export function apart(a: Body, b: Body, limit: number): number {
  const { circles } = a.shape;
  const { reach } = b.shape;
  let sum = 0;
  for (let k = 0; k < circles.length; k += 3) {
    const px = a.x + a.c * circles[k] - a.s * circles[k + 1];
    const py = a.y + a.s * circles[k] + a.c * circles[k + 1];
    const wanted = limit + circles[k + 2];
    const [dx, dy] = [px - b.x, py - b.y];
    const most = reach + wanted;
    if (dx * dx + dy * dy >= most * most || !look(b, px, py)) continue;
    const lacks = wanted - away;
    if (lacks <= 0) continue;
    sum += lacks * lacks;
    const [fx, fy] = [-2 * lacks * slopeX, -2 * lacks * slopeY];
    pushBody(a, px, py, fx, fy);
    pushBody(b, px, py, -fx, -fy);
  }
  return sum;
}

/** Points along a gate are looked at no farther apart, mm. Always as many of one gate, so that sums stay smooth. */
const gateStep = 1.6;

/** A gate past a piece or what stays; only the part of it that may be near. */
export function pastWay(way: Way, body: Body, limit: number): number {
  const [dx, dy] = [way.ex - way.ax, way.ey - way.ay];
  const [px, py] = [body.x - way.ax, body.y - way.ay];
  const length = Math.abs(way.length) || 1e-6;
  const along = (px * dx + py * dy) / length;
  const most = body.shape.reach + limit;
  if (along < -most || along > length + most || Math.abs(px * dy - py * dx) / length > most) return 0;
  const steps = Math.ceil(way.most / gateStep);
  const first = Math.max(0, Math.floor(((along - most) / length) * steps));
  const last = Math.min(steps, Math.ceil(((along + most) / length) * steps));
  let sum = 0;
  for (let k = first; k <= last; k++) {
    const t = k / steps;
    const [qx, qy] = [way.ax + t * dx, way.ay + t * dy];
    if (!look(body, qx, qy)) continue;
    const lacks = limit - away;
    if (lacks <= 0) continue;
    sum += lacks * lacks;
    const [fx, fy] = [-2 * lacks * slopeX, -2 * lacks * slopeY];
    way.push(t, fx, fy);
    pushBody(body, qx, qy, -fx, -fy);
  }
  return sum;
}

/** How much of its width a gate may be long in its own piece before it counts as running along it: less than a check allows. */
const lapping = 0.75;

/** A gate leaves its own piece: its distance grows at least half as fast as the gate goes on. */
export function ownWay(way: Way, body: Body, width: number): number {
  const steps = Math.ceil(way.most / gateStep);
  let sum = 0;
  for (let k = 1; k <= steps; k++) {
    const t = k / steps;
    const [qx, qy] = [way.ax + t * (way.ex - way.ax), way.ay + t * (way.ey - way.ay)];
    if (!look(body, qx, qy)) break;
    const out = 0.5 * (t * way.length - lapping * width);
    const isFar = out > width;
    const lacks = (isFar ? width : out) - away;
    if (out <= 0 || lacks <= 0) continue;
    sum += lacks * lacks;
    const [fx, fy] = [-2 * lacks * slopeX, -2 * lacks * slopeY];
    way.push(t, fx, fy);
    if (!isFar) way.stretch(lacks * t);
    pushBody(body, qx, qy, -fx, -fy);
  }
  return sum;
}

/** Two gates; where they cross, the end that has least to go is drawn over the other. */
export function waysApart(a: Way, b: Way, limit: number): number {
  if (farApart(a, b, limit)) return 0;
  const { s, t, apart: gap, crossing } = nearest(a, b);
  if (gap >= limit) return 0;
  if (crossing) return uncross(a, b, limit);
  const lacks = limit - gap;
  const [nx, ny] = [
    (a.ax + s * (a.ex - a.ax) - b.ax - t * (b.ex - b.ax)) / (gap || 1),
    (a.ay + s * (a.ey - a.ay) - b.ay - t * (b.ey - b.ay)) / (gap || 1),
  ];
  a.push(s, -2 * lacks * nx, -2 * lacks * ny);
  b.push(t, 2 * lacks * nx, 2 * lacks * ny);
  return lacks * lacks;
}

function uncross(a: Way, b: Way, limit: number): number {
  let best = { gap: Number.POSITIVE_INFINITY, one: a, other: b, s: 0, t: 0, nx: 0, ny: 0 };
  for (const [one, other] of [
    [a, b],
    [b, a],
  ])
    for (const s of [0, 1]) {
      const [px, py] = s === 0 ? [one.ax, one.ay] : [one.ex, one.ey];
      const [dx, dy] = [other.ex - other.ax, other.ey - other.ay];
      const t = ((px - other.ax) * dx + (py - other.ay) * dy) / (dx * dx + dy * dy || 1);
      const at = Math.min(1, Math.max(0, t));
      const [nx, ny] = [other.ax + at * dx - px, other.ay + at * dy - py];
      const gap = Math.hypot(nx, ny);
      if (gap < best.gap) best = { gap, one, other, s, t: at, nx, ny };
    }
  const { gap, one, other, s, t, nx, ny } = best;
  const lacks = limit + gap;
  const force = (2 * lacks) / (gap || 1);
  one.push(s, -force * nx, -force * ny);
  other.push(t, force * nx, force * ny);
  return lacks * lacks;
}

/** A vent, out along the radius through its piece's middle, past a gate farther out. */
export function ventPastWay(a: Body, way: Way, limit: number): number {
  const far = Math.max(1e-6, Math.hypot(a.x, a.y));
  const [ux, uy] = [a.x / far, a.y / far];
  const steps = Math.ceil(way.most / gateStep);
  let sum = 0;
  for (let k = 0; k <= steps; k++) {
    const t = k / steps;
    const [qx, qy] = [way.ax + t * (way.ex - way.ax), way.ay + t * (way.ey - way.ay)];
    const along = qx * ux + qy * uy;
    const aside = qy * ux - qx * uy;
    const lacks = limit - Math.abs(aside);
    if (along < far || lacks <= 0) continue;
    sum += lacks * lacks;
    const force = -2 * lacks * Math.sign(aside || 1);
    way.push(t, -force * uy, force * ux);
    const round = (-force * along) / far;
    a.gx += -uy * round;
    a.gy += ux * round;
  }
  return sum;
}
