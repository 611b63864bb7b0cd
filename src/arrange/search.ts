import { relax } from './relax.ts';
import { leanArm, type Strain, unknowns } from './strain.ts';

/** An arrangement while it is being looked for: the unknowns, which mouth each orbit's gates take, and what is broken. */
export interface Found {
  readonly x: Float64Array;
  readonly mouths: Int32Array;
  readonly value: number;
}

/** Moves are counted, never time: the same effort gives the same result on any machine. */
export interface Effort {
  readonly starts: number;
  readonly movesEach: number;
  /** Moves on the best starts, all in all. */
  readonly moves: number;
}

/** What a search is told while it runs: may throw to break off. */
export type OnMove = () => void;

/** Broken limits are taken for kept below this much, mm. */
const within = 0.008;
const enough = within ** 2;
const relaxSteps = 150;
/** Places tried for the worst of the pieces. */
const tries = 120;
/** Shares of the moves by which all are moved a little, and by which two change places. */
const shaken = 0.25;
const swapped = 0.2;

export const isLegal = ({ value }: Found): boolean => value <= enough;

/** From many starts on rings, a few moves each, then long runs on the best of them. */
export function search(
  strain: Strain,
  random: () => number,
  effort: Effort,
  onMove: OnMove = () => {},
): Found {
  const best: Found[] = [];
  for (let start = 0; start < effort.starts; start++) {
    onMove();
    let one = settle(strain, start % 2 === 0 ? ringStart(strain, random) : scattered(strain, random));
    for (let k = 0; k < effort.movesEach && !isLegal(one); k++) {
      onMove();
      one = move(strain, one, random);
    }
    if (isLegal(one)) return one;
    best.push(one);
    best.sort((a, b) => a.value - b.value);
    best.length = Math.min(best.length, 3);
  }
  return improve(strain, best, random, effort.moves, onMove);
}

/** Long runs, each a share of the moves; the best of all. */
export function improve(
  strain: Strain,
  from: readonly Found[],
  random: () => number,
  moves: number,
  onMove: OnMove = () => {},
): Found {
  let best = from[0];
  for (const start of from) {
    let one = start;
    for (let k = 0; k < moves / from.length && !isLegal(best); k++) {
      onMove();
      const next = move(strain, one, random);
      // A little worse is taken at times, so that it does not stay where it is.
      if (next.value < one.value * (random() < 0.15 ? 1.3 : 1)) one = next;
      if (one.value < best.value) best = one;
    }
  }
  return best;
}

/** Relaxed from where it is, gates through the mouths nearest to the axis. */
export function settle(strain: Strain, x: Float64Array, steps = relaxSteps): Found {
  const to = x.slice();
  chooseMouths(strain, to);
  let value = relax(strain.at, to, steps, enough / 4);
  if (chooseMouths(strain, to)) value = relax(strain.at, to, steps, enough / 4);
  return { x: to, mouths: strain.mouths.slice(), value };
}

/** What an arrangement breaks by the strain's present limits and goals. */
export function again(strain: Strain, { x, mouths }: Found, steps = relaxSteps): Found {
  strain.mouths.set(mouths);
  const to = x.slice();
  return { x: to, mouths, value: relax(strain.at, to, steps, enough / 4) };
}

/** The worst piece to the best of many places, or two change places; then all relax. */
function move(strain: Strain, from: Found, random: () => number): Found {
  strain.mouths.set(from.mouths);
  const scratch = new Float64Array(from.x.length);
  strain.at(from.x, scratch);
  const worst = pickWorst(strain.blame, random);
  const x = from.x.slice();
  const others = strain.orbits.map((_, i) => i).filter((i) => differs(strain, i, worst));
  const kind = random();
  if (kind < shaken) shake(strain, x, random);
  else if (kind < shaken + swapped && others.length > 0) {
    const other = others[Math.floor(random() * others.length)];
    const [a, b] = [placeOf(x, worst, strain), placeOf(x, other, strain)];
    setPlace(strain, x, worst, { ...b, turn: a.turn });
    setPlace(strain, x, other, { ...a, turn: b.turn });
  } else bestPlace(strain, x, worst, random);
  return settle(strain, x);
}

/** All moved a little, up to half of what each reaches. */
function shake(strain: Strain, x: Float64Array, random: () => number): void {
  const far = random();
  for (const [i, { kind }] of strain.orbits.entries())
    for (let k = 0; k < 3; k++) x[i * unknowns + k] += far * (random() - 0.5) * kind.shape.reach;
}

/** Mostly the worst, at times one of the next. */
function pickWorst(blame: Float64Array, random: () => number): number {
  const order = [...blame.keys()].sort((a, b) => blame[b] - blame[a]);
  const broken = Math.max(1, order.filter((i) => blame[i] > enough).length);
  return order[Math.floor(random() ** 3 * broken)];
}

const differs = ({ orbits }: Strain, i: number, j: number): boolean =>
  orbits[i].kind !== orbits[j].kind && orbits[i].copies === orbits[j].copies;

export function bestPlace(strain: Strain, x: Float64Array, orbit: number, random: () => number): void {
  const scratch = new Float64Array(x.length);
  const trial = x.slice();
  let [least, best] = [Number.POSITIVE_INFINITY, x.slice(orbit * unknowns, orbit * unknowns + unknowns)];
  for (let k = 0; k < tries; k++) {
    setPlace(strain, trial, orbit, anyPlace(strain, orbit, random));
    chooseMouths(strain, trial, orbit);
    const value = strain.at(trial, scratch, orbit);
    if (value >= least) continue;
    least = value;
    best = trial.slice(orbit * unknowns, orbit * unknowns + unknowns);
  }
  x.set(best, orbit * unknowns);
}

export interface Polar {
  readonly radius: number;
  readonly angle: number;
  /** Against the radius. */
  readonly turn: number;
  readonly lean: number;
}

export function placeOf(x: Float64Array, orbit: number, strain: Strain): Polar {
  const k = orbit * unknowns;
  const angle = Math.atan2(x[k + 1], x[k]);
  return {
    radius: Math.hypot(x[k], x[k + 1]),
    angle,
    turn: x[k + 2] / strain.arm(orbit) - angle,
    lean: x[k + 3] / leanArm,
  };
}

function setPlace(
  strain: Strain,
  x: Float64Array,
  orbit: number,
  { radius, angle, turn, lean }: Polar,
): void {
  const k = orbit * unknowns;
  x[k] = radius * Math.cos(angle);
  x[k + 1] = radius * Math.sin(angle);
  x[k + 2] = (angle + turn) * strain.arm(orbit);
  x[k + 3] = lean * leanArm;
}

/** A place anywhere in the room a piece has, even by area; those wished inside or outside keep to their half of it. */
function anyPlace(strain: Strain, orbit: number, random: () => number): Polar {
  const { place } = strain.orbits[orbit].kind;
  const [least, most] = room(strain, orbit);
  const half = Math.sqrt((least ** 2 + most ** 2) / 2);
  const from = place === 'outer' ? half : least;
  const to = place === 'inner' ? half : most;
  return {
    radius: Math.sqrt(from ** 2 + random() * (to ** 2 - from ** 2)),
    angle: 2 * Math.PI * random(),
    turn: anyTurn(strain, orbit, random),
    lean: (random() - 0.5) * strain.problem.ground.leanRad,
  };
}

/** Least and greatest distance of a piece's middle from the axis, however it is turned. */
function room(strain: Strain, orbit: number): [number, number] {
  const { radius, rim, well } = strain.problem.ground;
  const { reach, area } = strain.orbits[orbit].kind.shape;
  const thin = Math.min(reach, area / (4 * reach));
  const least = well ? well.radius + well.limit + thin : 0;
  return [least, Math.max(least + 1, radius - rim - thin)];
}

/** With one mouth it faces the axis, more or less; else any. */
function anyTurn(strain: Strain, orbit: number, random: () => number): number {
  const { gate } = strain.orbits[orbit].kind;
  if (!gate || gate.mouths.length > 1) return 2 * Math.PI * random();
  const [u, v] = gate.mouths[0].entry;
  return Math.PI - Math.atan2(v, u) + (random() - 0.5) * 1.2;
}

/** Each orbit's gates through the mouth that is nearest to the axis. True where one changed. */
function chooseMouths(strain: Strain, x: Float64Array, only?: number): boolean {
  let changed = false;
  for (const [i, { kind }] of strain.orbits.entries()) {
    if (!kind.gate || (only !== undefined && only !== i)) continue;
    const k = i * unknowns;
    const turn = x[k + 2] / strain.arm(i);
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    let [best, least] = [0, Number.POSITIVE_INFINITY];
    for (const [m, { entry }] of kind.gate.mouths.entries()) {
      const far = Math.hypot(x[k] + c * entry[0] - s * entry[1], x[k + 1] + s * entry[0] + c * entry[1]);
      if (far < least) [best, least] = [m, far];
    }
    changed ||= strain.mouths[i] !== best;
    strain.mouths[i] = best;
  }
  return changed;
}

/** Anywhere. */
function scattered(strain: Strain, random: () => number): Float64Array {
  const x = new Float64Array(strain.orbits.length * unknowns);
  for (const [i] of strain.orbits.entries()) setPlace(strain, x, i, anyPlace(strain, i, random));
  return x;
}

/** The large outside, or those that are wished there; each ring full before the next one inward. */
function ringStart(strain: Strain, random: () => number): Float64Array {
  const x = new Float64Array(strain.orbits.length * unknowns);
  const size = (i: number): number => strain.orbits[i].kind.shape.reach;
  const wish = (i: number): number =>
    ({ outer: 1, inner: -1, none: 0 })[strain.orbits[i].kind.place ?? 'none'];
  const rank = new Map(strain.orbits.map((_, i) => [i, 3 * wish(i) * size(i) + size(i) * (0.5 + random())]));
  const order = [...rank.keys()].sort((a, b) => (rank.get(b) ?? 0) - (rank.get(a) ?? 0));
  const { wall } = strain;
  const looser = 0.75 + 0.5 * random();
  for (let from = 0, shrunk = 0; from < order.length; ) {
    const radius = Math.max(
      room(strain, order[from])[0],
      room(strain, order[from])[1] - shrunk - size(order[from]) / 2,
    );
    const ring: { readonly i: number; readonly share: number }[] = [];
    let full = 0;
    for (; from < order.length; from++) {
      const { kind, copies } = strain.orbits[order[from]];
      const share =
        (copies * looser * (2 * Math.sqrt(kind.shape.area / Math.PI) + wall)) /
        (2 * Math.PI * Math.max(1, radius));
      if (ring.length > 0 && full + share > 1) break;
      ring.push({ i: order[from], share });
      full += share;
    }
    const begin = 2 * Math.PI * random();
    let passed = 0;
    for (const { i, share } of ring) {
      const angle = begin + ((passed + share / 2) / full) * ((2 * Math.PI) / strain.orbits[i].copies);
      passed += share;
      const turn = anyTurn(strain, i, random);
      setPlace(strain, x, i, { radius: radius + (random() - 0.5), angle, turn, lean: 0 });
    }
    shrunk += 2 * Math.sqrt(strain.orbits[ring[0].i].kind.shape.area / Math.PI) + wall;
  }
  return x;
}
