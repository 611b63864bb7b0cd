import {
  type PointMass,
  permissibleUnbalance,
  planeShares,
  planeUnbalances,
  sizeOf,
  staticUnbalance,
  type Unbalance,
} from '../../physics/index.ts';
import type { BalanceInput } from './balance-input.ts';

/** How the mold turns with what is in it, g.mm. */
export interface State {
  /** A mold spins up empty and is poured full. */
  readonly filling: 'full' | 'empty';
  /** The mold, or the cavity that a misrun leaves empty. */
  readonly subject: string;
  readonly all: Unbalance;
  readonly lower: Unbalance;
  readonly upper: Unbalance;
  /** What plates out of balance and a mold off the axis add at worst: both on the heavy side. */
  readonly added: number;
  /** Halves, metal and nuts, without the plates. */
  readonly moldKg: number;
  /** With the plates, and the height of its middle of mass, mm. Left out, the plates are not known. */
  readonly rotor?: { readonly massKg: number; readonly z: number };
}

/** Full, empty, and with the one cavity empty that leaves the most. */
export function statesOf(input: BalanceInput): { full: State; empty: State; misrun: State } {
  const { placed, fittings, fittingsEmpty } = input;
  const whole = placed.map(({ excess }) => excess);
  const without = ({ excess, metal }: (typeof placed)[number]): PointMass => ({
    ...excess,
    massG: excess.massG - metal.massG,
  });
  const misruns = placed.map((one, i) =>
    stateOf(input, 'full', [...whole.map((mass, k) => (k === i ? without(one) : mass)), ...fittings], one.id),
  );
  return {
    full: stateOf(input, 'full', [...whole, ...fittings]),
    empty: stateOf(input, 'empty', [...placed.map(without), ...fittingsEmpty]),
    misrun: misruns.reduce((worst, one) => (sizeOf(one.all) > sizeOf(worst.all) ? one : worst)),
  };
}

function stateOf(
  input: BalanceInput,
  filling: State['filling'],
  masses: readonly PointMass[],
  subject = 'mold',
): State {
  const { discKg, discZ, platesKg, platesGmm = 0, centering = 0, lower, upper } = input;
  const planes = planeUnbalances(masses, -lower, upper);
  const moldKg = masses.reduce((sum, { massG }) => sum + massG / 1000, discKg);
  const moment = masses.reduce((sum, { massG, z }) => sum + (massG * z) / 1000, discKg * discZ);
  // Plates lie on both faces alike.
  const rotor = platesKg !== undefined && {
    massKg: moldKg + platesKg,
    z: (moment + (platesKg * (upper - lower)) / 2) / (moldKg + platesKg),
  };
  return {
    filling,
    subject,
    all: staticUnbalance(masses),
    lower: planes.a,
    upper: planes.b,
    added: platesGmm + centering * moldKg * 1000,
    moldKg,
    ...(rotor && { rotor }),
  };
}

/** What a state is held to: the whole, and each outer face with its share. `share` is 1 for the whole. */
export interface Held {
  readonly which: 'whole' | 'lower' | 'upper';
  /** As the mold itself has it. */
  readonly own: number;
  readonly share: number;
}

/**
 * The standard shares out between the planes of the bearings, by the lever rule from the middle of mass. Where those
 * of the machine are not known, the outer faces stand for them.
 */
export function heldOf({ all, lower, upper, rotor }: State, input: BalanceInput): Held[] {
  const whole: Held = { which: 'whole', own: sizeOf(all), share: 1 };
  if (!rotor) return [whole];
  const shares = planeShares(rotor.z, -input.lower, input.upper);
  return [
    whole,
    { which: 'lower', own: sizeOf(lower), share: shares.a },
    { which: 'upper', own: sizeOf(upper), share: shares.b },
  ];
}

/** What the grade allows the whole at a speed, g.mm. */
export const allowedFor = (grade: string, massKg: number, speedRpm: number): number =>
  permissibleUnbalance(Number(grade.slice(1)), massKg, speedRpm);

/** The speed up to which the grade holds, full and empty: the limit falls as 1 / n. Undefined without grade or plates. */
export function gradeSpeed(input: BalanceInput): number | undefined {
  const { grade } = input;
  if (grade === undefined || input.placed.length === 0) return undefined;
  const { full, empty } = statesOf(input);
  const speeds = [full, empty].flatMap((state) =>
    heldOf(state, input).map(({ own, share }) => {
      const at1 = share * allowedFor(grade, state.rotor?.massKg ?? 0, 1);
      return at1 / (own + share * state.added);
    }),
  );
  return full.rotor && Math.min(...speeds);
}

/** How far off the axis the mold may sit, full and empty, before the grade is used up; 0 where it is already, mm. */
export function trueTo(input: BalanceInput, states: readonly State[], grade: string, speed: number): number {
  const room = states.flatMap((state) =>
    heldOf(state, input).map(({ own, share }) => {
      const allowed = allowedFor(grade, state.rotor?.massKg ?? 0, speed);
      return (allowed - (input.platesGmm ?? 0) - own / share) / (state.moldKg * 1000);
    }),
  );
  return Math.max(0, Math.min(...room));
}
