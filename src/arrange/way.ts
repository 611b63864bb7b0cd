/**
 * A straight gate from a point at (x, y) to the well's circle, leaning from the radius: where it lies, and how a force
 * on it moves its beginning and its lean. Lengths in mm.
 */
export class Way {
  /** Beginning: distance from the axis and direction. */
  radius = 0;
  ux = 1;
  uy = 0;
  length = 0;
  /** Beginning and end, mold frame. */
  ax = 0;
  ay = 0;
  ex = 0;
  ey = 0;
  /** Seen from the axis, the middle of the angles it lies in and half their width, rad. */
  middle = 0;
  spread = 0;
  #c = 1;
  #s = 0;
  #byRadius = 0;
  #byLean = 0;
  /** Forces gathered: along the radius, round the axis (a moment), on the lean. */
  #out = 0;
  #round = 0;
  #lean = 0;
  readonly well: number;
  /** It is never longer. */
  readonly most: number;

  constructor(well: number, most: number) {
    this.well = well;
    this.most = most;
  }

  set(ax: number, ay: number, leanRad: number): void {
    const r = Math.max(1e-6, Math.hypot(ax, ay));
    const [c, s] = [Math.cos(leanRad), Math.sin(leanRad)];
    // Where it would miss the well it is drawn to where it passes; leaning so far is a violation of its own.
    const least = (0.2 * this.well) ** 2;
    const square = this.well ** 2 - (r * s) ** 2;
    const root = Math.sqrt(Math.max(square, least));
    const misses = square < least;
    this.radius = r;
    this.ux = ax / r;
    this.uy = ay / r;
    this.#c = c;
    this.#s = s;
    this.length = r * c - root;
    this.#byRadius = c + (misses ? 0 : (r * s * s) / root);
    this.#byLean = -r * s + (misses ? 0 : (r * r * s * c) / root);
    this.ax = ax;
    this.ay = ay;
    const [lx, ly] = this.#local(1);
    this.ex = lx * this.ux - ly * this.uy;
    this.ey = lx * this.uy + ly * this.ux;
    const aside = Math.atan2(ly, lx) / 2;
    this.middle = Math.atan2(this.uy, this.ux) + aside;
    this.spread = Math.abs(aside);
    this.#out = 0;
    this.#round = 0;
    this.#lean = 0;
  }

  #local(t: number): [number, number] {
    return [this.radius - t * this.length * this.#c, t * this.length * this.#s];
  }

  /** A force at a share of its length. */
  push(t: number, fx: number, fy: number): void {
    const [c, s, length] = [this.#c, this.#s, this.length];
    const px = fx * this.ux + fy * this.uy;
    const py = -fx * this.uy + fy * this.ux;
    const [x, y] = this.#local(t);
    this.#out += px * (1 - t * this.#byRadius * c) + py * t * this.#byRadius * s;
    this.#round += -px * y + py * x;
    this.#lean += -px * t * (this.#byLean * c - length * s) + py * t * (this.#byLean * s + length * c);
  }

  /** A slope of its length. */
  stretch(slope: number): void {
    this.#out += slope * this.#byRadius;
    this.#lean += slope * this.#byLean;
  }

  /** How far the line through it passes the axis by, as a violation of `most`; its slopes are taken at once. */
  passing(most: number): number {
    const over = Math.abs(this.radius * this.#s) - most;
    if (over <= 0) return 0;
    const side = Math.sign(this.#s) * 2 * over;
    this.#out += side * this.#s;
    this.#lean += side * this.radius * this.#c;
    return over * over;
  }

  /** The force on its beginning, and on the lean. */
  forces(): { readonly x: number; readonly y: number; readonly lean: number } {
    const round = this.#round / this.radius;
    return {
      x: this.#out * this.ux - round * this.uy,
      y: this.#out * this.uy + round * this.ux,
      lean: this.#lean,
    };
  }
}

/** Whether two gates lie in directions so different that they keep a distance: a chord is over 0.63 of its arc. */
export function farApart(a: Way, b: Way, distance: number): boolean {
  const turn = a.middle - b.middle;
  const between = Math.abs(turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI))) - a.spread - b.spread;
  return 0.63 * between * Math.min(a.well, a.radius, b.radius) > distance;
}

/** Where two pieces of lines are nearest to each other: shares of their lengths; apart 0 where they cross. */
export function nearest(a: Way, b: Way): { s: number; t: number; apart: number; crossing: boolean } {
  const [dx, dy, fx, fy] = [a.ex - a.ax, a.ey - a.ay, b.ex - b.ax, b.ey - b.ay];
  const [rx, ry] = [b.ax - a.ax, b.ay - a.ay];
  const det = dx * fy - dy * fx;
  if (Math.abs(det) > 1e-12) {
    const s = (rx * fy - ry * fx) / det;
    const t = (rx * dy - ry * dx) / det;
    if (s >= 0 && s <= 1 && t >= 0 && t <= 1) return { s, t, apart: 0, crossing: true };
  }
  let best = { s: 0, t: 0, apart: Number.POSITIVE_INFINITY, crossing: false };
  const look = (s: number, t: number): void => {
    const apart = Math.hypot(rx + t * fx - s * dx, ry + t * fy - s * dy);
    if (apart < best.apart) best = { s, t, apart, crossing: false };
  };
  const share = (v: number): number => Math.min(1, Math.max(0, v));
  const [aa, bb] = [dx * dx + dy * dy || 1, fx * fx + fy * fy || 1];
  look(0, share(-(rx * fx + ry * fy) / bb));
  look(1, share(((dx - rx) * fx + (dy - ry) * fy) / bb));
  look(share((rx * dx + ry * dy) / aa), 0);
  look(share(((rx + fx) * dx + (ry + fy) * dy) / aa), 1);
  return best;
}
