/** A pin in its socket: where it stands (mm) and how far it may move sideways from the middle, all round (mm). */
export interface Pin {
  readonly x: number;
  readonly y: number;
  readonly clearance: number;
}

type Point = readonly [number, number];

interface Round {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Of a micrometer: what answers are true to, mm. */
const accuracy = 1e-6;
/** Distances that differ by less are rounding, mm. */
const rounding = 1e-12;
/** Halvings of the turn before an interval is too narrow to matter. */
const mostHalvings = 60;

/**
 * The plate's state seen from a point q: it is turned by theta and q is moved by s. Pin i then moves by
 * s + theta k x (p_i - q), so s must lie in the circle round -theta k x (p_i - q) with the pin's clearance. Quarter
 * turns keep distances: the circles stand at theta (p_i - q), turned by a quarter.
 */
const circlesAt = (pins: readonly Pin[], [x, y]: Point, turnRad: number, widen = 0): Round[] =>
  pins.map((pin) => {
    const [dx, dy] = [pin.x - x, pin.y - y];
    return { x: turnRad * dy, y: -turnRad * dx, radius: pin.clearance + widen * Math.hypot(dx, dy) };
  });

const inAll = (rounds: readonly Round[], x: number, y: number): boolean =>
  rounds.every((one) => Math.hypot(x - one.x, y - one.y) <= one.radius + rounding);

/** Where two circles cross, none where they do not. */
function* crossings(a: Round, b: Round): Generator<Point> {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const apart = Math.sqrt(square);
  if (apart === 0 || apart > a.radius + b.radius + rounding) return;
  const along = (square + a.radius * a.radius - b.radius * b.radius) / (2 * square);
  const across = Math.sqrt(Math.max(0, a.radius * a.radius - along * along * square)) / apart;
  yield [a.x + along * dx - across * dy, a.y + along * dy + across * dx];
  yield [a.x + along * dx + across * dy, a.y + along * dy - across * dx];
}

/** Whether the circles have a point in common: then a middle or a crossing of two lies in all. */
function meet(rounds: readonly Round[]): boolean {
  if (rounds.some(({ x, y }) => inAll(rounds, x, y))) return true;
  return rounds.some((a, i) =>
    rounds.slice(i + 1).some((b) => [...crossings(a, b)].some(([x, y]) => inAll(rounds, x, y))),
  );
}

/**
 * The common point of the circles that is farthest from the origin. The distance is convex, so it is found at a
 * crossing of two circles or where a circle itself is farthest.
 */
function farthest(rounds: readonly Round[]): Point | undefined {
  const found: Point[] = [];
  for (const [i, a] of rounds.entries()) {
    const off = Math.hypot(a.x, a.y);
    const [ux, uy] = off > 0 ? [a.x / off, a.y / off] : [1, 0];
    found.push([a.x + a.radius * ux, a.y + a.radius * uy]);
    for (let j = i + 1; j < rounds.length; j++) found.push(...crossings(a, rounds[j]));
  }
  found.sort((p, q) => q[0] * q[0] + q[1] * q[1] - p[0] * p[0] - p[1] * p[1]);
  return found.find(([x, y]) => inAll(rounds, x, y));
}

/**
 * The largest turn (rad) of one half against the other that all pins allow: the largest theta for which some shift t
 * keeps |t + theta k x p_i| <= c_i for every pin. Infinity for pins at one place. A negative or missing clearance
 * throws a RangeError.
 *
 * Small turns (theta k x p for the chord): true to theta^2 R / 2, 0.0005 mm at 0.003 rad and 100 mm. Two pins d
 * apart: theta = (c1 + c2) / d. Source: Drake (ed.), Dimensioning and Tolerancing Handbook, ch. 24, Werst, Pinned
 * Interfaces, solved here for any number of pins as the convex problem it is.
 */
export function largestTurn(pins: readonly Pin[]): number {
  checkPins(pins);
  let high = Number.POSITIVE_INFINITY;
  for (const [i, a] of pins.entries()) {
    for (const b of pins.slice(i + 1)) {
      const apart = Math.hypot(a.x - b.x, a.y - b.y);
      if (apart > 0) high = Math.min(high, (a.clearance + b.clearance) / apart);
    }
  }
  const fits = (turn: number): boolean => meet(circlesAt(pins, [pins[0].x, pins[0].y], turn));
  if (!Number.isFinite(high) || high === 0 || fits(high)) return high;
  // What fits at one turn fits at every smaller one: the set is convex and holds the true seat.
  let low = 0;
  for (let k = 0; k < mostHalvings; k++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** How far a point of one half may be from where it belongs on the other. */
export interface Mismatch {
  /** mm. */
  readonly distance: number;
  /** The turn at which it is, rad. */
  readonly turnRad: number;
  /** Which of the points asked about has it. */
  readonly point: number;
}

/** Turns looked at first, so that most of the search can be spared. */
const firstLooks = 16;

/**
 * The largest mismatch (mm) of the halves at any of the points given: the greatest |t + theta k x q| that all pins
 * allow. At (0, 0) it is the largest sideways shift of the disc's axis. To 1e-6 mm, by halving the range of turns:
 * within half a width w of a turn every pin's circle is widened by w |p_i - q|, which bounds what can be found there.
 * Undefined for pins at one place, and without points.
 */
export function largestMismatch(pins: readonly Pin[], points: readonly Point[]): Mismatch | undefined {
  const most = largestTurn(pins);
  if (!Number.isFinite(most) || points.length === 0) return undefined;
  let best: Mismatch = { distance: 0, turnRad: 0, point: 0 };
  const tryTurn = (point: number, turnRad: number, halfWidth = 0): number => {
    const found = farthest(circlesAt(pins, points[point], turnRad, halfWidth));
    const distance = found ? Math.hypot(...found) : Number.NEGATIVE_INFINITY;
    if (halfWidth === 0 && distance > best.distance) best = { distance, turnRad, point };
    return distance;
  };
  for (let point = 0; point < points.length; point++) {
    for (let k = 0; k <= firstLooks; k++) tryTurn(point, (most * k) / firstLooks);
  }
  for (let point = 0; point < points.length; point++) {
    const open: Point[] = [[0, most]];
    for (let range = open.pop(); range; range = open.pop()) {
      const [from, to] = range;
      const middle = (from + to) / 2;
      if (!(middle > from && middle < to)) continue;
      if (tryTurn(point, middle, (to - from) / 2) <= best.distance + accuracy) continue;
      tryTurn(point, middle);
      open.push([from, middle], [middle, to]);
    }
  }
  return best;
}

function checkPins(pins: readonly Pin[]): void {
  if (pins.length === 0) throw new RangeError('play: no pin');
  for (const { clearance } of pins) {
    if (!(clearance >= 0)) throw new RangeError(`play: a clearance of ${clearance} mm`);
  }
}
