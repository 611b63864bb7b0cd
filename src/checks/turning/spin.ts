import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  type Judged,
  makeFigure,
} from '../../findings/index.ts';
import { alloyDensity, type Check, check, type Mold } from '../../mold/index.ts';
import { rimSpeed } from '../../physics/index.ts';
import { leftOut } from '../from-mold/index.ts';
import { halvesOf, leastFactor, type RigidHalves, strained, strainedSpeed } from './rigid-halves.ts';

interface SpinInput {
  readonly missing: readonly string[];
  /** What rigid halves cannot be judged without, and they are made to be turned. */
  readonly unknown: readonly string[];
  readonly speedRpm?: number;
  readonly maxSpeedRpm?: number;
  readonly radius: number;
  readonly rigid?: RigidHalves;
}

/** Speed of mold and machine, and whether rigid halves stand it. */
export const spin: Check = check<SpinInput>({
  id: 'spin',
  title: 'Spin',
  follows: false,
  processes: ['rubber', 'rigid'],
  units: (mold) =>
    mold.placements.length > 0 || mold.bench.spin
      ? [{ subject: 'spin', about: [], input: inputOf(mold) }]
      : [],
  run: (input) => {
    const { missing, unknown } = input;
    const note = [
      ...(missing.length > 0 ? [finding('spin.not-checked', { subject: 'spin', values: { missing } })] : []),
      ...(unknown.length > 0
        ? [finding('spin.unknown', { subject: 'spin', values: { missing: unknown } })]
        : []),
    ];
    const { speedRpm, radius, rigid } = input;
    if (speedRpm === undefined) return { findings: note };
    const rim = makeFigure('spin.rimSpeed', {
      subject: 'spin',
      value: rimSpeed(speedRpm, radius),
      source: 'omega r',
      estimated: false,
    });
    const halves = rigid ? judgeHalves(rigid, speedRpm) : { findings: [], figures: [] };
    return {
      findings: [...note, ...overLimit(input, speedRpm), ...halves.findings],
      figures: [rim, ...halves.figures],
    };
  },
});

function inputOf(mold: Mold): SpinInput {
  const { bench, disc, process } = mold;
  const { speedRpm, shotKg, shotShare } = bench.spin ?? {};
  const filled = process === 'rigid' && mold.placements.length > 0;
  return {
    missing: leftOut([
      ...(filled ? [] : ([['spin.speed', speedRpm]] as const)),
      ['machine.maxSpeed', bench.machine?.maxSpeedRpm],
    ]),
    unknown: filled
      ? leftOut([
          ['spin.speed', speedRpm],
          ['spin.shot', shotKg ?? shotShare],
          // What the halves carry while they turn.
          ['alloy.density', alloyDensity(mold)],
          ['fixture.material', mold.fixture.assumed ? undefined : mold.fixture.material],
        ])
      : [],
    ...(bench.spin?.speedRpm !== undefined && { speedRpm: bench.spin.speedRpm }),
    ...(bench.machine?.maxSpeedRpm !== undefined && { maxSpeedRpm: bench.machine.maxSpeedRpm }),
    radius: disc.radius,
    ...(process === 'rigid' && { rigid: halvesOf(mold) }),
  };
}

function overLimit({ maxSpeedRpm }: SpinInput, speedRpm: number): Finding[] {
  if (maxSpeedRpm === undefined || speedRpm <= maxSpeedRpm) return [];
  const values = { measured: speedRpm, limit: maxSpeedRpm };
  return [finding('spin.over-limit', { subject: 'spin', values })];
}

function judgeHalves(halves: RigidHalves, speedRpm: number): Judged {
  const { material } = halves;
  const found = strained(halves, speedRpm);
  if (found === 'unknown') {
    const values = { material, speed: speedRpm };
    return { findings: [finding('spin.strength-unknown', { subject: 'spin', values })], figures: [] };
  }
  if (!found) return { findings: [], figures: [] };
  const { stress, strengthPa, burst, estimated } = found;
  const figure = (name: FigureName, value: number, source = found.source): Figure =>
    makeFigure(name, { subject: 'spin', value, source, estimated });
  const factor = strengthPa / stress.greatest;
  const figures = [
    figure('spin.stress', stress.greatest),
    figure('spin.rimStress', stress.rim),
    figure('spin.factor', factor, `${found.strengthSource}; over the greatest stress`),
    figure('spin.burst', burst, `${found.source}; stress grows with the square of the speed`),
  ];
  if (factor >= leastFactor) return { findings: [], figures };
  const allowed = strainedSpeed(burst);
  const values = { measured: factor, limit: leastFactor, material, speed: speedRpm, allowed };
  return { findings: [finding('spin.weak', { subject: 'spin', values })], figures };
}
