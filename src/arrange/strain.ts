import {
  apart,
  type Body,
  distanceAt,
  mayMeet,
  ownWay,
  pastWay,
  pushBody,
  ventPastWay,
  waysApart,
} from './body.ts';
import { type Fixed, type Orbit, type Problem, roomToRise } from './problem.ts';
import { Way } from './way.ts';

/** Unknowns of each orbit: x, y, turn and lean, the angles times a length so that all are of one size. */
export const unknowns = 4;
/** The length that a lean is taken times, mm. */
export const leanArm = 25;

/** What an orbit should come to beside being legal: one radius with others, a turn from the radius. */
export interface Goal {
  readonly radius?: number;
  readonly turnRad?: number;
  readonly angleRad?: number;
  readonly leanRad?: number;
}

/** All limits that are broken, each squared, with their slopes. */
export class Strain {
  readonly problem: Problem;
  readonly orbits: readonly Orbit[];
  readonly mouths: Int32Array;
  readonly goals: Goal[];
  /** What each orbit is part of, after a call. */
  readonly blame: Float64Array;
  /** Wall between pieces, and how much wider all limits are held, mm. */
  wall: number;
  slack: number;
  readonly #bodies: Body[][];
  readonly #fixed: Body[];
  readonly #arms: Float64Array;

  constructor(problem: Problem, orbits: readonly Orbit[], slack: number) {
    this.problem = problem;
    this.orbits = orbits;
    this.slack = slack;
    this.wall = problem.ground.wall;
    this.mouths = new Int32Array(orbits.length);
    this.goals = orbits.map(() => ({}));
    this.blame = new Float64Array(orbits.length);
    this.#arms = Float64Array.from(orbits, ({ kind }) => Math.max(0.5, 0.6 * kind.shape.reach));
    const well = problem.ground.well?.radius;
    this.#bodies = orbits.map(({ kind, copies }, orbit) =>
      Array.from({ length: copies }, (_, copy): Body => {
        const way = kind.gate && well !== undefined ? new Way(well, problem.ground.radius) : undefined;
        return { shape: kind.shape, orbit, copy, way, x: 0, y: 0, c: 1, s: 0, gx: 0, gy: 0, gt: 0 };
      }),
    );
    this.#fixed = problem.fixed.map((fixed): Body => {
      const { shape, x, y, turnRad } = fixed;
      const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
      return { shape, orbit: -1, copy: 0, fixed, x, y, c, s, gx: 0, gy: 0, gt: 0 };
    });
  }

  arm(orbit: number): number {
    return this.#arms[orbit];
  }

  /** The sum over all orbits, or over what one of them is part of. */
  readonly at = (x: Float64Array, slopes: Float64Array, only?: number): number => {
    this.#pose(x);
    this.blame.fill(0);
    let sum = 0;
    const n = this.orbits.length;
    for (let i = 0; i < n; i++) {
      if (only === undefined || only === i) sum += this.#alone(i, x);
      for (let j = i; j < n; j++)
        if (only === undefined || only === i || only === j) sum += this.#together(i, j);
    }
    sum += this.#unbalance();
    this.#gather(x, slopes);
    return sum;
  };

  #pose(x: Float64Array): void {
    for (const [i, bodies] of this.#bodies.entries()) {
      const k = i * unknowns;
      const { kind, copies } = this.orbits[i];
      const turn = x[k + 2] / this.#arms[i];
      const lean = x[k + 3] / leanArm;
      for (const body of bodies) {
        const by = (2 * Math.PI * body.copy) / copies;
        const [c, s] = [Math.cos(by), Math.sin(by)];
        body.x = c * x[k] - s * x[k + 1];
        body.y = s * x[k] + c * x[k + 1];
        body.c = Math.cos(turn + by);
        body.s = Math.sin(turn + by);
        body.gx = 0;
        body.gy = 0;
        body.gt = 0;
        if (!body.way || !kind.gate) continue;
        const [u, v] = kind.gate.mouths[this.mouths[i]].within;
        body.way.set(body.x + body.c * u - body.s * v, body.y + body.s * u + body.c * v, lean);
      }
    }
  }

  #gather(x: Float64Array, slopes: Float64Array): void {
    slopes.fill(0);
    for (const [i, bodies] of this.#bodies.entries()) {
      const k = i * unknowns;
      const { copies } = this.orbits[i];
      for (const body of bodies) {
        if (body.way) {
          const { x: fx, y: fy, lean } = body.way.forces();
          pushBody(body, body.way.ax, body.way.ay, fx, fy);
          slopes[k + 3] += lean / leanArm;
        }
        const by = (2 * Math.PI * body.copy) / copies;
        const [c, s] = [Math.cos(by), Math.sin(by)];
        slopes[k] += c * body.gx + s * body.gy;
        slopes[k + 1] += -s * body.gx + c * body.gy;
        slopes[k + 2] += body.gt / this.#arms[i];
      }
    }
    for (const [i] of this.orbits.entries()) this.#lean(i, x, slopes);
  }

  /** Rim, well, what stays, and its own gate past itself. */
  #alone(i: number, x: Float64Array): number {
    const [first] = this.#bodies[i];
    let sum = this.#toRim(first) + this.#wish(i, x);
    const { kind } = this.orbits[i];
    for (const body of this.#bodies[i])
      for (const still of this.#fixed) {
        const fixed = still.fixed as Fixed;
        const rise = roomToRise(this.problem.ground, kind.level, fixed.level);
        const limit = Math.max(fixed.limit, rise, fixed.isPiece ? this.wall : 0);
        if (mayMeet(body, still, limit + this.slack))
          sum += apart(body, still, limit + this.slack) + apart(still, body, limit + this.slack);
        if (kind.gate && body.way)
          sum += pastWay(body.way, still, fixed.gateLimit + kind.gate.width / 2 + this.slack);
        if (kind.vent !== undefined)
          sum += this.#pastVent(body, still, this.problem.ground.wall + kind.vent / 2 + this.slack);
      }
    if (first.way && kind.gate)
      sum += ownWay(first.way, first, kind.gate.width) + first.way.passing(0.7 * first.way.well);
    const leaning = Math.abs(x[i * unknowns + 3]) - this.problem.ground.leanRad * leanArm;
    if (kind.gate && leaning > 0) sum += leaning * leaning;
    this.blame[i] += sum;
    return sum;
  }

  #lean(i: number, x: Float64Array, slopes: Float64Array): void {
    const k = i * unknowns;
    const lean = x[k + 3];
    const over = Math.abs(lean) - this.problem.ground.leanRad * leanArm;
    if (this.orbits[i].kind.gate && over > 0) slopes[k + 3] += 2 * over * Math.sign(lean);
    const wanted = this.goals[i].leanRad;
    if (wanted !== undefined) slopes[k + 3] += 2 * (lean - wanted * leanArm);
  }

  /** How far it is from what it should come to. */
  #wish(i: number, x: Float64Array): number {
    const { radius, turnRad, angleRad, leanRad } = this.goals[i];
    const [body] = this.#bodies[i];
    const k = i * unknowns;
    const far = Math.max(1e-6, Math.hypot(body.x, body.y));
    const [ux, uy] = [body.x / far, body.y / far];
    let sum = 0;
    if (radius !== undefined) {
      const off = far - radius;
      sum += off * off;
      body.gx += 2 * off * ux;
      body.gy += 2 * off * uy;
    }
    const round = (off: number): void => {
      body.gx += (2 * off * -uy * this.#arms[i]) / far;
      body.gy += (2 * off * ux * this.#arms[i]) / far;
    };
    const angle = Math.atan2(body.y, body.x);
    if (turnRad !== undefined) {
      const off = wrapped(x[k + 2] / this.#arms[i] - angle - turnRad) * this.#arms[i];
      sum += off * off;
      body.gt += 2 * off * this.#arms[i];
      round(-off);
    }
    if (angleRad !== undefined) {
      const off = wrapped(angle - angleRad) * this.#arms[i];
      sum += off * off;
      round(off);
    }
    if (leanRad !== undefined) sum += (x[k + 3] - leanRad * leanArm) ** 2;
    return sum;
  }

  #toRim(body: Body): number {
    const { radius, rim, well } = this.problem.ground;
    const { circles, reach } = body.shape;
    const far = Math.hypot(body.x, body.y);
    const rise = roomToRise(this.problem.ground, this.orbits[body.orbit].kind.level);
    const most = radius - Math.max(rim, rise) - this.slack;
    const least = well ? well.radius + Math.max(well.limit, rise) + this.slack : 0;
    if (far + reach <= most && far - reach >= least) return 0;
    let sum = 0;
    for (let k = 0; k < circles.length; k += 3) {
      const px = body.x + body.c * circles[k] - body.s * circles[k + 1];
      const py = body.y + body.s * circles[k] + body.c * circles[k + 1];
      const away = Math.hypot(px, py) || 1e-6;
      const out = away + circles[k + 2] - most;
      const under = least > 0 ? least + circles[k + 2] - away : 0;
      const force = (out > 0 ? 2 * out : 0) - (under > 0 ? 2 * under : 0);
      if (force === 0) continue;
      sum += (out > 0 ? out * out : 0) + (under > 0 ? under * under : 0);
      pushBody(body, px, py, (force * px) / away, (force * py) / away);
    }
    return sum;
  }

  /** Of two orbits of as many copies, the first of one against all of the other says all. */
  #together(i: number, j: number): number {
    const [a, b] = [this.#bodies[i], this.#bodies[j]];
    let sum = 0;
    if (i === j) {
      for (let k = 1; k < a.length; k++) {
        if (2 * k <= a.length) sum += this.#between(a[0], a[k]);
        sum += this.#lines(a[0], a[k]);
      }
    } else {
      const alike = a.length === b.length;
      for (const one of alike ? [a[0]] : a)
        for (const other of b) sum += this.#between(one, other) + this.#lines(one, other);
      for (const other of alike ? [b[0]] : b) for (const one of a) sum += this.#lines(other, one);
    }
    this.blame[i] += sum;
    if (j !== i) this.blame[j] += sum;
    return sum;
  }

  #between(a: Body, b: Body): number {
    const [one, other] = [this.orbits[a.orbit].kind, this.orbits[b.orbit].kind];
    const limit = Math.max(this.wall, roomToRise(this.problem.ground, one.level, other.level)) + this.slack;
    return (mayMeet(a, b, limit) ? apart(a, b, limit) + apart(b, a, limit) : 0) + this.#ways(a, b);
  }

  /** Gate and vent of the one past the other. */
  #lines(a: Body, b: Body): number {
    const { gate, vent } = this.orbits[a.orbit].kind;
    let sum = 0;
    if (gate && a.way) sum += pastWay(a.way, b, this.wall + gate.width / 2 + this.slack);
    if (vent !== undefined) {
      sum += this.#pastVent(a, b, this.problem.ground.wall + vent / 2 + this.slack);
      if (b.way) sum += ventPastWay(a, b.way, this.problem.ground.gateGap + vent);
    }
    return sum;
  }

  /** Two gates. */
  #ways(a: Body, b: Body): number {
    const [one, other] = [this.orbits[a.orbit].kind.gate, this.orbits[b.orbit].kind.gate];
    if (!one || !other || !a.way || !b.way) return 0;
    return waysApart(a.way, b.way, (one.width + other.width) / 2 + this.problem.ground.gateGap + this.slack);
  }

  /** A vent runs out along the radius through the piece's middle. */
  #pastVent(a: Body, b: Body, limit: number): number {
    const far = Math.max(1e-6, Math.hypot(a.x, a.y));
    const [ux, uy] = [a.x / far, a.y / far];
    const along = b.x * ux + b.y * uy;
    const aside = Math.abs(b.y * ux - b.x * uy);
    if (along + b.shape.reach < far || aside > b.shape.reach + limit) return 0;
    let sum = 0;
    const end = Math.min(this.problem.ground.radius, along + b.shape.reach);
    const start = Math.ceil(Math.max(far, along - b.shape.reach) / ventStep) * ventStep;
    for (let r = start; r <= end; r += ventStep) {
      const found = distanceAt(b, r * ux, r * uy);
      if (!found || found.away >= limit) continue;
      const force = 2 * (limit - found.away);
      sum += (limit - found.away) ** 2;
      pushBody(b, r * ux, r * uy, force * found.nx, force * found.ny);
      const round = (force * (found.nx * uy - found.ny * ux) * r) / far;
      a.gx += -uy * round;
      a.gy += ux * round;
    }
    return sum;
  }

  /** What is placed once has to keep the disc in balance; what goes round the axis is. */
  #unbalance(): number {
    const singles = this.#bodies.flat().filter(({ orbit }) => this.orbits[orbit].copies === 1);
    if (singles.length < 2) return 0;
    const heaviest = Math.max(...singles.map(({ orbit }) => this.orbits[orbit].kind.weight));
    if (!(heaviest > 0)) return 0;
    let [ux, uy] = [0, 0];
    for (const { orbit, x, y } of singles) {
      ux += (this.orbits[orbit].kind.weight / heaviest) * x;
      uy += (this.orbits[orbit].kind.weight / heaviest) * y;
    }
    const size = Math.hypot(ux, uy);
    const over = 0.2 * (size - allowedOff);
    if (over <= 0) return 0;
    for (const body of singles) {
      const share = (0.4 * over * this.orbits[body.orbit].kind.weight) / heaviest / size;
      body.gx += share * ux;
      body.gy += share * uy;
    }
    return over * over;
  }
}

/** How far off the axis the heaviest piece may be left without a counterpart, mm. */
const allowedOff = 3;
/** Points along a vent are looked at so far apart, mm. */
const ventStep = 2.5;

const wrapped = (rad: number): number => rad - 2 * Math.PI * Math.round(rad / (2 * Math.PI));
