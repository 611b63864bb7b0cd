import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  makeFigure,
  type ReportPart,
} from '../findings/index.ts';
import type { Matrix4, TriangleMesh } from '../kernel/index.ts';
import { type Check, type Mold, type Placement, type Sprue, work } from '../mold/index.ts';
import {
  finestDetail,
  forceApart,
  gFactor,
  type PressedArea,
  ringPressed,
  stripPressed,
  surfaceHeight,
  surfaceRise,
  turningPressure,
  volumeUnder,
} from '../physics/index.ts';
import { masterMesh } from './cover.ts';
import { alloyDensity, alloyTension } from './densities.ts';
import { metalWell, pouringRadius } from './metal-well.ts';
import { leftOut, notChecked } from './not-given.ts';
import { type PressedCavity, pressedOf } from './pressed-area.ts';
import { channelReach, channelSection, imprintOf } from './turning-masses.ts';

/** The machine holds this many times the force at least. Our own choice. */
const closingReserve = 1.25;
const fastest = 10_000;
const byRotation =
  'liquid turning with its vessel: p = rho omega^2 (r^2 - r_s^2) / 2, surface z0 + omega^2 r^2 / 2 g';
const byVolumes = 'volumes of cavities, gates and well times the density';

interface Cavity {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  /** mm3. */
  readonly volume: number;
  readonly castingMm3: number;
  readonly castingG?: number;
  readonly estimated: boolean;
}

interface PressureInput {
  readonly missing: readonly string[];
  readonly cavities: readonly Cavity[];
  readonly gates: readonly { readonly volume: number; readonly pressed: PressedArea }[];
  readonly densityKgM3?: number;
  readonly tensionNM?: number;
  readonly estimated: boolean;
  readonly sprue?: Omit<Sprue, 'at'>;
  readonly upper: number;
  readonly speedRpm?: number;
  readonly shotKg?: number;
  readonly detail?: number;
  readonly closingForceN?: number;
  readonly maxSpeedRpm?: number;
}

/** What the shot weighs, where it stands while it turns, and how hard it presses on cavities and halves. */
export const pressure: Check = work<PressureInput, ReportPart>({
  id: 'pressure',
  title: 'Pressure and shot',
  scope: 'whole',
  processes: ['rubber', 'rigid'],
  jobs: (mold) => (mold.placements.length > 0 ? [{ subject: 'spin', input: inputOf(mold) }] : []),
  run: (input) => {
    const note =
      input.missing.length > 0
        ? [notChecked('shot.not-checked', 'spin', 'Pressure and shot are in part', input.missing)]
        : [];
    const { densityKgM3, sprue, speedRpm } = input;
    if (densityKgM3 === undefined) return { findings: note };
    const castings = input.cavities.map((one) => casting(one, densityKgM3, input.estimated));
    if (!sprue || speedRpm === undefined) return { findings: note, figures: castings };
    const turning: Turning = {
      ...input,
      densityKgM3,
      sprue,
      speedRpm,
      cavitiesPressed: input.cavities.map(pressedOf),
    };
    const part = judge(turning);
    return { findings: [...note, ...part.findings], figures: [...castings, ...part.figures] };
  },
});

function inputOf(mold: Mold): PressureInput {
  const { bench, sprue, placements, channels, disc } = mold;
  const { spin, machine } = bench;
  const [density, tension] = [alloyDensity(mold), alloyTension(mold)];
  const { at: _, ...shape } = sprue ?? { at: undefined };
  return {
    missing: leftOut([
      ['alloy.density', density],
      ['sprue', sprue],
      ['spin.speed', spin?.speedRpm],
      ['spin.shot', spin?.shotKg],
      ['machine.closingForce', machine?.closingForceN],
    ]),
    cavities: placements.map((one) => cavityOf(mold, one)),
    gates: channels
      .filter(({ kind }) => kind === 'gate')
      .map((gate) => {
        const { length, ends } = channelReach(gate);
        return { volume: channelSection(gate) * length, pressed: stripPressed(gate.width, ...ends) };
      }),
    ...(density && { densityKgM3: density.value }),
    ...(tension && { tensionNM: tension.value }),
    estimated: (density?.estimated ?? false) || placements.some((one) => one.estimated),
    ...(sprue && { sprue: shape as Omit<Sprue, 'at'> }),
    upper: disc.upper,
    ...(spin?.speedRpm !== undefined && { speedRpm: spin.speedRpm }),
    ...(spin?.shotKg !== undefined && { shotKg: spin.shotKg }),
    ...(spin?.detail !== undefined && { detail: spin.detail }),
    ...(machine?.closingForceN !== undefined && { closingForceN: machine.closingForceN }),
    ...(machine?.maxSpeedRpm !== undefined && { maxSpeedRpm: machine.maxSpeedRpm }),
  };
}

function cavityOf(mold: Mold, placement: Placement): Cavity {
  const { id, master, matrix, scale, estimated } = placement;
  const massG = mold.masters.find((one) => one.id === master)?.massG;
  const { volume } = imprintOf(mold, placement);
  return {
    id,
    mesh: masterMesh(mold, master),
    matrix,
    volume,
    // Shrink takes back what the allowance added to the master.
    castingMm3: volume / scale ** 3,
    ...(massG !== undefined && { castingG: massG }),
    estimated,
  };
}

const grams = (mm3: number, densityKgM3: number): number => mm3 * densityKgM3 * 1e-6;

const casting = (
  { id, castingMm3, castingG, estimated }: Cavity,
  densityKgM3: number,
  rough: boolean,
): Figure =>
  makeFigure('shot.casting', {
    subject: id,
    value: castingG ?? grams(castingMm3, densityKgM3),
    source: castingG === undefined ? 'volume times density' : 'the plan',
    estimated: castingG === undefined && (estimated || rough),
  });

interface Turning extends PressureInput {
  readonly densityKgM3: number;
  readonly sprue: Omit<Sprue, 'at'>;
  readonly speedRpm: number;
  readonly cavitiesPressed: readonly PressedCavity[];
}

interface Judged {
  readonly findings: readonly Finding[];
  readonly figures: readonly Figure[];
}

function judge(turning: Turning): Judged {
  const { densityKgM3, sprue, upper, speedRpm, shotKg, estimated } = turning;
  const figure = (name: FigureName, value: number, source: string, subject = 'spin'): Figure =>
    makeFigure(name, { subject, value, source, estimated });
  const rise = surfaceRise(speedRpm);
  const well = metalWell(sprue, upper);
  const parts = mm3OfParts(turning);
  const least = grams(parts + volumeUnder(well, -rise * sprue.wellRadius ** 2, rise), densityKgM3);
  const brim = upper - rise * pouringRadius(sprue, upper) ** 2;
  const most = grams(parts + volumeUnder(well, brim, rise), densityKgM3);
  const figures = [
    figure('shot.least', least, `${byVolumes}; free surface at the edge of the well`),
    figure('shot.most', most, `${byVolumes}; free surface at the edge of the pouring hole`),
  ];
  if (shotKg === undefined) return { findings: [], figures };
  const shot = shotKg * 1000;
  const gram = (value: number) => ({ value, unit: 'g' }) as const;
  if (shot < least) {
    const says = `The shot weighs ${shot.toFixed(0)} g; cavities, gates and the edge of the well take ${least.toFixed(0)} g at ${speedRpm} rpm.`;
    const short = finding('shot.short', { subject: 'spin', measured: gram(shot), limit: gram(least), says });
    return { findings: [short], figures };
  }
  if (shot > most) {
    const says = `The shot weighs ${shot.toFixed(0)} g; at ${speedRpm} rpm more than ${most.toFixed(0)} g climbs out of the pouring hole.`;
    const spill = finding('shot.spill', { subject: 'spin', measured: gram(shot), limit: gram(most), says });
    return { findings: [spill], figures };
  }
  const pressed = pressures(turning, shotKg);
  return { findings: pressed.findings, figures: [...figures, ...pressed.figures] };
}

const mm3OfParts = ({ cavities, gates }: PressureInput): number =>
  [...cavities, ...gates].reduce((sum, { volume }) => sum + volume, 0);

/** Square of the free surface's radius in the parting plane, mm2; below 0 where metal covers the axis there. */
function surfaceAt(turning: Turning, shotKg: number, speedRpm: number): number {
  const rise = surfaceRise(speedRpm);
  const inWell = (shotKg * 1e9) / turning.densityKgM3 - mm3OfParts(turning);
  return -surfaceHeight(metalWell(turning.sprue, turning.upper), inWell, rise) / rise;
}

/** Cavities, gates, and what metal covers of the upper half over the well and in its leaning hole. */
function opening(turning: Turning, surface: number, speedRpm: number): number {
  const { sprue, upper, densityKgM3, cavitiesPressed, gates } = turning;
  const from = Math.max(Math.sqrt(Math.max(0, surface)), pouringRadius(sprue, upper));
  const ring = from < sprue.wellRadius ? [ringPressed(from, sprue.wellRadius)] : [];
  const areas = [
    ...cavitiesPressed.map(({ pressed }) => pressed),
    ...gates.map(({ pressed }) => pressed),
    ...ring,
  ];
  return areas.reduce((sum, area) => sum + Math.max(0, forceApart(area, densityKgM3, speedRpm, surface)), 0);
}

function pressures(turning: Turning, shotKg: number): Judged {
  const { densityKgM3, speedRpm, tensionNM, estimated, cavitiesPressed, closingForceN } = turning;
  const surface = surfaceAt(turning, shotKg, speedRpm);
  const figure = (name: FigureName, value: number, subject = 'spin', source = byRotation): Figure =>
    makeFigure(name, { subject, value, source, estimated });
  const at = (radius: number, speed = speedRpm, from = surface): number =>
    turningPressure(densityKgM3, speed, radius, from);
  const force = opening(turning, surface, speedRpm);
  const figures = cavitiesPressed.flatMap(({ id, inner, outer }) => [
    figure('pressure.inner', at(inner), id),
    figure('pressure.outer', at(outer), id),
    figure(
      'pressure.gFactor',
      gFactor(speedRpm, outer),
      id,
      'omega^2 r / g at the outside (Groover, ch. 11)',
    ),
    ...(tensionNM === undefined || at(inner) === 0
      ? []
      : [
          makeFigure('pressure.detail', {
            subject: id,
            value: finestDetail(tensionNM, at(inner)),
            source: 'R = 2 gamma / p (Young and Laplace); surface tension from memory',
            estimated: true,
          }),
        ]),
  ]);
  figures.push(
    figure('pressure.surface', Math.sqrt(Math.max(0, surface))),
    figure('pressure.opening', force),
  );
  const findings: Finding[] = [];
  if (closingForceN !== undefined && force * closingReserve > closingForceN) {
    const says = `Metal pushes the halves apart with ${force.toFixed(0)} N, and a quarter more is wanted against it; the machine holds them with ${closingForceN.toFixed(0)} N.`;
    const limit = { value: closingForceN, unit: 'N' } as const;
    findings.push(
      finding('shot.flash', { subject: 'spin', measured: { value: force, unit: 'N' }, limit, says }),
    );
  }
  const band = speedBand(turning, shotKg);
  if (band.least !== undefined) figures.push(figure('speed.least', band.least));
  if (band.most !== undefined) figures.push(figure('speed.most', band.most));
  if (band.least !== undefined && speedRpm < band.least) findings.push(tooSlow(turning, band.least));
  return { findings, figures };
}

const tooSlow = ({ speedRpm, detail }: Turning, least: number): Finding =>
  finding('shot.slow', {
    subject: 'spin',
    measured: { value: speedRpm, unit: 'rpm' },
    limit: { value: least, unit: 'rpm' },
    says: `At ${speedRpm} rpm metal is not pressed into details of ${detail} mm at the inner ends of all cavities; that takes ${least.toFixed(0)} rpm.`,
  });

/** From the speed that presses metal into the detail wanted everywhere, to the one the machine holds shut. */
function speedBand(turning: Turning, shotKg: number): { readonly least?: number; readonly most?: number } {
  const { detail, tensionNM, closingForceN, maxSpeedRpm, densityKgM3, cavitiesPressed } = turning;
  const nearest = Math.min(...cavitiesPressed.map(({ inner }) => inner));
  const fills = (speed: number): boolean =>
    turningPressure(densityKgM3, speed, nearest, surfaceAt(turning, shotKg, speed)) >=
    (2 * (tensionNM ?? 0) * 1000) / (detail ?? 1);
  const opens = (speed: number): boolean =>
    opening(turning, surfaceAt(turning, shotKg, speed), speed) * closingReserve > (closingForceN ?? 0);
  const least = detail === undefined || tensionNM === undefined ? undefined : firstSpeed(fills);
  const open = closingForceN === undefined ? undefined : firstSpeed(opens);
  const limits = [open, maxSpeedRpm].filter((one) => one !== undefined);
  return {
    ...(least !== undefined && { least }),
    ...(limits.length > 0 && { most: Math.min(...limits) }),
  };
}

/** The speed from which on something holds, to 0.5 rpm; undefined where it does not at the fastest. */
function firstSpeed(holds: (speedRpm: number) => boolean): number | undefined {
  let [low, high] = [1, fastest];
  if (!holds(high)) return undefined;
  while (high - low > 0.5) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
