import type { Vec3 } from '../geometry/index.ts';
import { finestDetail, planeBubbleSpeed } from '../physics/index.ts';
import { type Cells, sides, volumeOf, wall } from './cells.ts';
import type { Assumption, Pocket, Port } from './conditions.ts';
import type { EmptyRoom } from './empty-room.ts';
import { escapeRanks } from './escape.ts';
import { type Filling, fillFrom } from './fill-order.ts';
import { type GateForecast, gateForecast } from './gate.ts';
import { type LockRule, leastBond, mostBond, usualAngle, usualBond } from './lock.ts';
import { type Lock, locksOf } from './locks.ts';
import { leastPocket, pocketsOf } from './pockets.ts';
import { pressureUnder, pullAt, type Ranks } from './potential.ts';
import { sealsOf } from './seals.ts';

/** What is assumed: the usual, then one thing at a time at each end of its range. */
const usualLock: LockRule = { bond: usualBond, angle: usualAngle };
export const assumptions: readonly Assumption[] = [
  { lock: usualLock, leaks: false },
  { lock: { bond: leastBond, angle: usualAngle }, leaks: false },
  { lock: { bond: mostBond, angle: usualAngle }, leaks: false },
  { lock: { bond: usualBond, angle: 110 }, leaks: false },
  { lock: { bond: usualBond, angle: 160 }, leaks: false },
  { lock: usualLock, leaks: true },
];

/** A place where air stays under all, or some, of the assumptions. Volumes in mm3 after pressing together. */
export interface AirPlace {
  readonly stays: 'all' | 'some';
  /** By assumption, in their order. */
  readonly volumes: readonly number[];
  /** Its largest pocket, under the usual assumption where there is one. */
  readonly pocket: Omit<Pocket, 'cells' | 'leaksOut'>;
  /** Time a bubble takes from there to the gate, and the superheat there lasts, s. */
  readonly riseS: number;
  readonly superheatS?: number;
}

/** With the cells of that pocket, in the order metal would fill them. */
export interface FoundAir extends AirPlace {
  readonly cells: readonly number[];
}

/** What comes of a cavity when it is filled. */
export interface Forecast {
  readonly cell: number;
  /** mm3 of the cavity in cells, and of them where metal comes to. */
  readonly volume: number;
  readonly reached: number;
  readonly filling: Filling;
  readonly ranks: Ranks;
  readonly gates: readonly GateForecast[];
  /** The worst first. */
  readonly places: readonly FoundAir[];
  /** Time to fill it through its gates, s. */
  readonly fillS: number;
  /** Gaps thinner than this stay empty where the pressure is least, mm. */
  readonly thinnest: number;
}

/** A cavity as it is filled. */
export interface FilledRoom extends EmptyRoom {
  readonly ports: readonly Port[];
  /** Cells of its gates. */
  readonly gate: ReadonlySet<number>;
  readonly filling: Filling;
}

export function fillRoom(empty: EmptyRoom, ports: readonly Port[]): FilledRoom {
  const { cells, ranks } = empty;
  const gates = ports.filter(({ kind }) => kind === 'gate');
  const gate = new Set(gates.flatMap((port) => port.cells));
  const sources = gates.map((port) => sourceOf(port, ranks));
  return { ...empty, ports, gate, filling: fillFrom(cells, ranks, sources) };
}

/** Metal comes in at the lowest cell of a gate's mouth. */
const sourceOf = ({ cells }: Port, { rank }: Ranks): number =>
  cells.reduce((lowest, c) => (rank[c] < rank[lowest] ? c : lowest), cells[0]);

/** Air that stays under one rule of what narrow places do, leaks aside. */
export function airLeft(room: FilledRoom, lock: LockRule): Pocket[] {
  return airBehind(room, locksIn(room, lock));
}

/** Pockets under each assumption; a leak only lets some of them out. */
function airByAssumption(room: FilledRoom): Pocket[][] {
  const known = new Map<LockRule, Pocket[]>();
  // Where nothing shuts one rule is like another.
  let free: Pocket[] | undefined;
  const under = (lock: LockRule): Pocket[] => {
    const locks = locksIn(room, lock);
    if (locks.length > 0) return airBehind(room, locks);
    free ??= airBehind(room, locks);
    return free;
  };
  return assumptions.map(({ lock, leaks }) => {
    const pockets = known.get(lock) ?? under(lock);
    known.set(lock, pockets);
    return leaks ? pockets.filter(({ leaksOut }) => !leaksOut) : pockets;
  });
}

/** The narrow places that do not let metal and air pass each other. */
function locksIn({ cells, conditions, gate, narrowUnder }: FilledRoom, rule: LockRule): Lock[] {
  return narrowUnder(rule).flatMap(({ stretchesFrom }) =>
    locksOf(cells, stretchesFrom(gate), rule, conditions),
  );
}

function airBehind(room: FilledRoom, locks: readonly Lock[]): Pocket[] {
  const { cells, ports, filling } = room;
  const seals = sealsOf(cells, filling, locks, ports);
  const out = escapeRanks(cells, seals, [...new Set(ports.flatMap((port) => port.cells))]);
  return pocketsOf({ ...room, seals, out, locks }, room.conditions);
}

/** The forecast of one cavity over all assumptions. Throws RangeError without a gate. */
export function forecastRoom(empty: EmptyRoom, ports: readonly Port[]): Forecast {
  const { cells, conditions } = empty;
  const gates = ports.filter(({ kind, cells: mouth }) => kind === 'gate' && mouth.length > 0);
  if (gates.length === 0) throw new RangeError('a cavity is filled through a gate');
  const room = fillRoom(empty, ports);
  const reached = volumeOf(cells, room.filling.sequence);
  const volume = volumeOf(
    cells,
    cells.numbers.filter((c) => c !== wall),
  );
  const pockets = airByAssumption(room);
  const through = gates.map((port) => gateForecast(cells, port, conditions, assumptions[0].lock, reached));
  const flow = through.reduce((sum, gate) => sum + gate.flow, 0);
  return {
    cell: cells.cell,
    volume,
    reached,
    filling: room.filling,
    ranks: room.ranks,
    gates: through,
    places: placesOf(room, pockets, through),
    fillS: volume / flow,
    thinnest: thinnestOf(room),
  };
}

/** By the pressure at the cell nearest the axis that metal comes to. */
function thinnestOf({ ranks, filling: { sequence }, conditions }: FilledRoom): number {
  const { field, metal, wellLevel } = conditions;
  let highest = Number.NEGATIVE_INFINITY;
  for (const c of sequence) highest = Math.max(highest, ranks.potential[c]);
  const pressure = pressureUnder(field, metal.densityKgM3, -wellLevel * wellLevel, highest);
  return pressure > 0 ? finestDetail(metal.tensionNM, pressure) : Number.POSITIVE_INFINITY;
}

/** Pockets of all assumptions that share cells or touch are one place. */
function placesOf(
  room: FilledRoom,
  pockets: readonly (readonly Pocket[])[],
  gates: readonly GateForecast[],
): FoundAir[] {
  const { cells } = room;
  const place = new Int32Array(cells.count).fill(none);
  for (const pocket of pockets.flat()) for (const c of pocket.cells) place[c] = unnumbered;
  const count = numberStretches(cells, place);
  const found = Array.from({ length: count }, () => assumptions.map(() => 0));
  const shown: (Pocket | undefined)[] = Array.from({ length: count });
  pockets.forEach((list, k) => {
    for (const pocket of list) {
      const at = place[pocket.cells[0]];
      // Of the first assumption that has one, the largest.
      if (!shown[at]) shown[at] = pocket;
      found[at][k] += pocket.volume;
    }
  });
  const all = found.flatMap((volumes, at): FoundAir[] => {
    const one = shown[at];
    return one ? [airPlace(room, volumes, one, gates)] : [];
  });
  const weight = ({ volumes }: FoundAir): number => volumes.reduce((sum, volume) => sum + volume, 0);
  return all.sort((a, b) => Number(b.stays === 'all') - Number(a.stays === 'all') || weight(b) - weight(a));
}

const none = -1;
const unnumbered = -2;

function numberStretches({ count, beside }: Cells, place: Int32Array): number {
  let number = 0;
  const stack: number[] = [];
  for (let first = 0; first < count; first++) {
    if (place[first] !== unnumbered) continue;
    place[first] = number;
    stack.push(first);
    for (let c = stack.pop(); c !== undefined; c = stack.pop())
      for (let s = sides * c; s < sides * c + sides; s++) {
        const n = beside[s];
        if (n === wall || place[n] !== unnumbered) continue;
        place[n] = number;
        stack.push(n);
      }
    number++;
  }
  return number;
}

function airPlace(
  { clearance, conditions: { field, superheatS } }: FilledRoom,
  volumes: readonly number[],
  { cells, leaksOut: _, ...pocket }: Pocket,
  gates: readonly GateForecast[],
): FoundAir {
  const widest = cells.reduce((most, c) => Math.max(most, clearance[c]), 0);
  const far = Math.min(...gates.map((gate) => apart(gate.place, pocket.place)));
  const speed = planeBubbleSpeed(pullAt(field, pocket.place[0], pocket.place[1]), 2 * widest);
  return {
    stays: volumes.every((volume) => volume >= leastPocket) ? 'all' : 'some',
    volumes,
    pocket,
    cells,
    riseS: (far * 1e-3) / speed,
    ...(superheatS !== undefined && { superheatS: superheatS * widest ** 2 }),
  };
}

const apart = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
