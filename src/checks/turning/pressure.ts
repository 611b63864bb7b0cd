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
import { type Check, check, soundSprue } from '../../mold/index.ts';
import { finestDetail, gFactor, turningPressure } from '../../physics/index.ts';
import { type Cavity, type ShotInput, shotInput } from './shot-input.ts';
import {
  closingReserve,
  leastShot,
  metalOf,
  mostShot,
  opening,
  shotOf,
  surfaceAt,
  type Turning,
} from './turning-metal.ts';

const grams = (mm3: number, densityKgM3: number): number => mm3 * densityKgM3 * 1e-6;

const byRotation =
  'liquid turning with its vessel: p = rho omega^2 (r^2 - r_s^2) / 2, surface z0 + omega^2 r^2 / 2 g';
const byVolumes = 'volumes of cavities, gates and well times the density of the liquid metal';

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
    const { solidKgM3, speedRpm } = input;
    const castings =
      solidKgM3 === undefined
        ? []
        : input.cavities.map((one) => casting(one, solidKgM3, input.solidEstimated));
    const metal = metalOf(input, memoize);
    if (!metal || speedRpm === undefined) return { findings: note, figures: castings };
    const part = judge({ ...metal, speedRpm });
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
    source: castingG === undefined ? 'volume times density of the solid metal' : 'the plan',
    estimated: castingG === undefined && (estimated || rough),
  });

function judge(turning: Turning): Judged & Pick<ReportPart, 'series'> {
  const { speedRpm, estimated } = turning;
  const figure = (name: FigureName, value: number, source: string): Figure =>
    makeFigure(name, { subject: 'spin', value, source, estimated });
  const [least, most] = [leastShot(turning, speedRpm), mostShot(turning, speedRpm)];
  const figures = [
    figure('shot.least', least, `${byVolumes}; free surface at the edge of the well`),
    figure('shot.most', most, `${byVolumes}; free surface at the edge of the pouring hole`),
  ];
  const shot = shotOf(turning);
  if (shot === undefined) return { findings: [], figures };
  const byPlan =
    turning.shotShare === undefined ? 'the plan' : 'share of the way from the least shot to the largest';
  figures.push(figure('shot.poured', shot, byPlan));
  const outside = (code: 'shot.short' | 'shot.spill', limit: number): Finding =>
    finding(code, { subject: 'spin', values: { measured: shot, limit, speed: speedRpm } });
  if (shot < least) return { findings: [outside('shot.short', least)], figures };
  if (shot > most) return { findings: [outside('shot.spill', most)], figures };
  const pressed = pressures(turning, shot);
  return {
    findings: pressed.findings,
    figures: [...figures, ...pressed.figures],
    series: [pressureSeries(turning, shot)],
  };
}

/** Points of the plot beside the one on the axis. */
const plotted = 60;

/** Pressure of the metal (Pa) against the distance from the axis, out to the farthest cavity. */
function pressureSeries(turning: Turning, shotG: number): Series {
  const { densityKgM3, speedRpm, cavitiesPressed } = turning;
  const surface = surfaceAt(turning, shotG, speedRpm);
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

function pressures(turning: Turning, shotG: number): Judged {
  const { densityKgM3, speedRpm, tensionNM, estimated, cavitiesPressed, closingForceN } = turning;
  const surface = surfaceAt(turning, shotG, speedRpm);
  const figure = (name: FigureName, value: number, subject = 'spin', source = byRotation): Figure =>
    makeFigure(name, { subject, value, source, estimated });
  const at = (radius: number): number => turningPressure(densityKgM3, speedRpm, radius, surface);
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
  return { findings, figures };
}
