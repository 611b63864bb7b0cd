import {
  type Figure,
  type FigureName,
  type Finding,
  figureCatalogue,
  finding,
  makeFigure,
} from '../../findings/index.ts';
import { type Check, check, soundSprue } from '../../mold/index.ts';
import { turningPressure } from '../../physics/index.ts';
import { type BalanceInput, balanceInput } from './balance-input.ts';
import { gradeSpeed } from './balance-states.ts';
import { halvesOf, type RigidHalves, strained, strainedSpeed } from './rigid-halves.ts';
import { type ShotInput, shotInput } from './shot-input.ts';
import {
  closingReserve,
  leastShot,
  type Metal,
  metalOf,
  mostShot,
  opening,
  shotOf,
  surfaceAt,
} from './turning-metal.ts';

/** Speeds are looked for up to here, rpm: no plan may ask for more. */
const fastest = 10_000;

interface SpeedInput {
  readonly shot: ShotInput;
  readonly halves?: RigidHalves;
  readonly balance: BalanceInput;
}

/** From the speed that fills the finest detail, up to the lowest of all the speeds something is passed at. */
export const speedBand: Check = check<SpeedInput>({
  id: 'speed',
  title: 'Band of speeds',
  follows: false,
  processes: ['rubber', 'rigid'],
  units: (mold) => {
    if (mold.placements.length === 0 || (mold.sprue && !soundSprue(mold))) return [];
    const halves = mold.process === 'rigid' && { halves: halvesOf(mold) };
    const input = { shot: shotInput(mold), balance: balanceInput(mold), ...halves };
    return [{ subject: 'spin', about: [], input }];
  },
  run: (input, { memoize }) => {
    const metal = metalOf(input.shot, memoize);
    const shotG = metal && shotOf(metal);
    const least = metal && shotG !== undefined ? fillingSpeed(metal, shotG) : undefined;
    const limits = [...ofMachine(input), ...(metal && shotG !== undefined ? ofShot(metal, shotG) : [])];
    const figures = [...(least ? [least] : []), ...limits, ...lowest(limits)];
    return { figures, findings: metal && least && shotG !== undefined ? tooSlow(metal, shotG, least) : [] };
  },
});

const figure = (name: FigureName, value: number, source: string, estimated: boolean): Figure =>
  makeFigure(name, { subject: 'spin', value, source, estimated });

/** The lowest of the limits that are known, and which it is. */
function lowest(limits: readonly Figure[]): Figure[] {
  if (limits.length === 0) return [];
  const { name: by, value, estimated } = limits.reduce((a, b) => (b.value < a.value ? b : a));
  const known = limits.map(({ name }) => figureCatalogue[name].label).join('; ');
  return [{ ...figure('speed.most', value, `lowest of: ${known}`, estimated), by }];
}

/** What machine, halves and balance allow. */
function ofMachine({ shot: { maxSpeedRpm }, halves, balance }: SpeedInput): Figure[] {
  const found = halves && strained(halves, fastest);
  const grade = gradeSpeed(balance);
  return [
    ...(maxSpeedRpm === undefined ? [] : [figure('speed.machine', maxSpeedRpm, 'the plan', false)]),
    ...(found && found !== 'unknown'
      ? [figure('speed.strains', strainedSpeed(found.burst), found.source, found.estimated)]
      : []),
    ...(grade === undefined || grade > fastest
      ? []
      : [figure('speed.grade', grade, 'ISO 21940-11:2016: U = 1000 G m / omega', balance.estimated)]),
  ];
}

const byRotation = 'liquid turning with its vessel: surface z0 + omega^2 r^2 / 2 g';

/** What the metal does: it climbs out of the hole, and opens the halves. */
function ofShot(metal: Metal, shotG: number): Figure[] {
  const { closingForceN, estimated } = metal;
  const spills = turningPoint((speed) => mostShot(metal, speed) < shotG);
  const opens =
    closingForceN === undefined
      ? undefined
      : turningPoint(
          (speed) => opening(metal, surfaceAt(metal, shotG, speed), speed) * closingReserve > closingForceN,
        );
  return [
    ...(spills === undefined ? [] : [figure('speed.spills', spills.last, byRotation, estimated)]),
    ...(opens === undefined ? [] : [figure('speed.opens', opens.last, byRotation, estimated)]),
  ];
}

/** The speed that presses metal into the finest detail everywhere. */
function fillingSpeed(metal: Metal, shotG: number): Figure | undefined {
  const { detail, tensionNM, densityKgM3, cavitiesPressed } = metal;
  if (detail === undefined || tensionNM === undefined) return undefined;
  const nearest = Math.min(...cavitiesPressed.map(({ inner }) => inner));
  const wanted = (2 * tensionNM * 1000) / detail;
  const fills = (speed: number): boolean =>
    turningPressure(densityKgM3, speed, nearest, surfaceAt(metal, shotG, speed)) >= wanted;
  const speed = turningPoint(fills);
  const source = 'R = 2 gamma / p (Young and Laplace); surface tension from memory';
  return speed === undefined ? undefined : figure('speed.least', speed.first, source, true);
}

function tooSlow(metal: Metal, shotG: number, { value: limit }: Figure): Finding[] {
  const { speedRpm: measured, detail } = metal;
  if (measured === undefined || detail === undefined || measured >= limit) return [];
  // A shot that is short, or spilled, fills nothing at all.
  if (shotG < leastShot(metal, measured) || shotG > mostShot(metal, measured)) return [];
  return [finding('shot.slow', { subject: 'spin', values: { measured, limit, detail } })];
}

/** The speed something begins to hold at, to 0.5 rpm, from below and above; undefined where it never does. */
function turningPoint(
  holds: (speedRpm: number) => boolean,
): { readonly last: number; readonly first: number } | undefined {
  let [low, high] = [1, fastest];
  if (!holds(high)) return undefined;
  while (high - low > 0.5) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return { last: low, first: high };
}
