import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  type Judged,
  makeFigure,
  type ReportPart,
  type Series,
} from '../../findings/index.ts';
import { type Check, check, metalWell, shaftRadius, soundSprue } from '../../mold/index.ts';
import { finestDetail, gFactor, surfaceRise, turningPressure, volumeUnder } from '../../physics/index.ts';
import { pressedOf } from './pressed-area.ts';
import { type Cavity, type ShotInput, shotInput } from './shot-input.ts';
import { closingReserve, mm3OfParts, opening, speedBand, surfaceAt, type Turning } from './turning-metal.ts';

const grams = (mm3: number, densityKgM3: number): number => mm3 * densityKgM3 * 1e-6;

const byRotation =
  'liquid turning with its vessel: p = rho omega^2 (r^2 - r_s^2) / 2, surface z0 + omega^2 r^2 / 2 g';
const byVolumes = 'volumes of cavities, gates and well times the density';

/** What the shot weighs, where it stands while it turns, and how hard it presses on cavities and halves. */
export const pressure: Check = check<ShotInput>({
  id: 'pressure',
  title: 'Pressure and shot',
  follows: false,
  processes: ['rubber', 'rigid'],
  units: (mold) => {
    // Nothing can be poured where there is no hole; a stop says why it cannot be made.
    if (mold.placements.length === 0 || (mold.sprue && !soundSprue(mold))) return [];
    return [{ subject: 'spin', about: [], input: shotInput(mold) }];
  },
  run: (input, { memoize }) => {
    const note =
      input.missing.length > 0
        ? [finding('shot.not-checked', { subject: 'spin', values: { missing: input.missing } })]
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
      cavitiesPressed: input.cavities.map((cavity) => pressedOf(cavity, memoize)),
    };
    const part = judge(turning);
    return { ...part, findings: [...note, ...part.findings], figures: [...castings, ...part.figures] };
  },
});

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

function judge(turning: Turning): Judged & Pick<ReportPart, 'series'> {
  const { densityKgM3, sprue, upper, speedRpm, estimated } = turning;
  const figure = (name: FigureName, value: number, source: string, subject = 'spin'): Figure =>
    makeFigure(name, { subject, value, source, estimated });
  const rise = surfaceRise(speedRpm);
  const well = metalWell(sprue, upper);
  const parts = mm3OfParts(turning);
  const least = grams(parts + volumeUnder(well, -rise * sprue.wellRadius ** 2, rise), densityKgM3);
  const brim = upper - rise * shaftRadius(sprue, upper) ** 2;
  const most = grams(parts + volumeUnder(well, brim, rise), densityKgM3);
  const figures = [
    figure('shot.least', least, `${byVolumes}; free surface at the edge of the well`),
    figure('shot.most', most, `${byVolumes}; free surface at the edge of the pouring hole`),
  ];
  const shot = poured(turning, least, most);
  if (shot === undefined) return { findings: [], figures };
  const shotKg = shot / 1000;
  figures.push(
    figure(
      'shot.poured',
      shot,
      turning.shotKg === undefined ? 'share of the way from the least shot to the largest' : 'the plan',
    ),
  );
  const outside = (code: 'shot.short' | 'shot.spill', limit: number): Finding =>
    finding(code, { subject: 'spin', values: { measured: shot, limit, speed: speedRpm } });
  if (shot < least) return { findings: [outside('shot.short', least)], figures };
  if (shot > most) return { findings: [outside('shot.spill', most)], figures };
  const pressed = pressures(turning, shotKg);
  return {
    findings: pressed.findings,
    figures: [...figures, ...pressed.figures],
    series: [pressureSeries(turning, shotKg)],
  };
}

/** Mass of the shot in g: as the plan gives it, or by its share. */
function poured({ shotKg, shotShare }: Turning, least: number, most: number): number | undefined {
  if (shotShare !== undefined) return least + shotShare * (most - least);
  return shotKg === undefined ? undefined : shotKg * 1000;
}

/** Points of the plot beside the one on the axis. */
const plotted = 60;

/** Pressure of the metal (Pa) against the distance from the axis, out to the farthest cavity. */
function pressureSeries(turning: Turning, shotKg: number): Series {
  const { densityKgM3, speedRpm, cavitiesPressed } = turning;
  const surface = surfaceAt(turning, shotKg, speedRpm);
  const farthest = Math.max(...cavitiesPressed.map(({ outer }) => outer));
  const radii = Array.from({ length: plotted + 1 }, (_, i) => (farthest * i) / plotted);
  const values = radii.map((radius) => turningPressure(densityKgM3, speedRpm, radius, surface));
  return {
    name: 'pressure.radius',
    subject: 'spin',
    x: { label: 'from the axis', unit: 'mm', values: radii },
    y: { label: 'pressure', unit: 'Pa', values },
  };
}

function pressures(turning: Turning, shotKg: number): Judged {
  const { densityKgM3, speedRpm, tensionNM, estimated, cavitiesPressed, closingForceN, detail } = turning;
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
  if (closingForceN !== undefined && force * closingReserve > closingForceN)
    findings.push(
      finding('shot.flash', { subject: 'spin', values: { measured: force, limit: closingForceN } }),
    );
  const band = speedBand(turning, shotKg);
  if (band.least !== undefined) figures.push(figure('speed.least', band.least));
  if (band.most !== undefined) figures.push(figure('speed.most', band.most));
  if (band.least !== undefined && detail !== undefined && speedRpm < band.least) {
    const values = { measured: speedRpm, limit: band.least, detail };
    findings.push(finding('shot.slow', { subject: 'spin', values }));
  }
  return { findings, figures };
}
