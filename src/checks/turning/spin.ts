import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  type Judged,
  makeFigure,
} from '../../findings/index.ts';
import { type Check, check, type Mold } from '../../mold/index.ts';
import { burstSpeed, discStress, rimSpeed } from '../../physics/index.ts';
import type { HalfMaterial } from '../../tables/index.ts';
import { alloyDensity, halfMaterialOf, imprintOf, leftOut } from '../from-mold/index.ts';

/**
 * Tensile strength over the greatest stress. No source sets one for printed halves: our own choice, for what the
 * formula does not see: layers, sockets and thin walls. It stands for half the burst speed.
 */
const leastFactor = 4;

interface SpinInput {
  readonly missing: readonly string[];
  /** What rigid halves cannot be judged without, and they are made to be turned. */
  readonly unknown: readonly string[];
  readonly speedRpm?: number;
  readonly maxSpeedRpm?: number;
  readonly radius: number;
  readonly rigid?: RigidHalves;
}

interface RigidHalves {
  readonly material: string;
  /** What is known of that. */
  readonly row?: HalfMaterial;
  readonly bore: number;
  /** mm3 of both halves without the cavities, and of the cavities. */
  readonly solid: number;
  readonly cavities: number;
  /** Undefined where neither plan nor table tells; then rigid halves cannot be judged. */
  readonly alloyKgM3?: number;
  readonly alloyEstimated: boolean;
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
    const halves = rigid ? judgeHalves(rigid, speedRpm, radius) : { findings: [], figures: [] };
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

function halvesOf(mold: Mold): RigidHalves {
  const { disc, sprue, placements, fixture } = mold;
  const alloy = alloyDensity(mold);
  const bore = sprue?.wellRadius ?? 0;
  const cavities = placements.reduce((sum, one) => sum + imprintOf(mold, one).volume, 0);
  const whole = Math.PI * (disc.radius ** 2 - bore ** 2) * (disc.lower + disc.upper);
  const row = halfMaterialOf(mold, fixture.material);
  return {
    material: fixture.material,
    ...(row && { row }),
    // The well is wider than the hole, and the stress at the bore grows with its width.
    bore,
    solid: Math.max(0, whole - cavities),
    cavities,
    ...(alloy && { alloyKgM3: alloy.value }),
    alloyEstimated: alloy?.estimated ?? false,
  };
}

function overLimit({ maxSpeedRpm }: SpinInput, speedRpm: number): Finding[] {
  if (maxSpeedRpm === undefined || speedRpm <= maxSpeedRpm) return [];
  const values = { measured: speedRpm, limit: maxSpeedRpm };
  return [finding('spin.over-limit', { subject: 'spin', values })];
}

const byDisc =
  'turning disc with a bore as wide as the well (Timoshenko; Roark, ch. 16; Shigley 3-15); metal carried by what is left of the halves';

function judgeHalves(halves: RigidHalves, speedRpm: number, radius: number): Judged {
  const { material, row, bore, solid, cavities, alloyKgM3, alloyEstimated } = halves;
  const { densityKgM3: own, strengthPa: strength, poisson } = row ?? {};
  if (!own || !strength || !poisson) {
    const values = { material, speed: speedRpm };
    return { findings: [finding('spin.strength-unknown', { subject: 'spin', values })], figures: [] };
  }
  const metal = cavities > 0 ? alloyKgM3 : 0;
  if (metal === undefined || !(solid > 0 && radius > bore)) return { findings: [], figures: [] };
  // All the metal hangs on the material that the cavities leave.
  const densityKgM3 = own.value + (metal * cavities) / solid;
  const stress = discStress({ radius, bore, densityKgM3, poisson: poisson.value }, speedRpm);
  const estimated = alloyEstimated || [own, strength, poisson].some(({ source }) => source.kind === 'memory');
  const figure = (name: FigureName, value: number, source = byDisc): Figure =>
    makeFigure(name, { subject: 'spin', value, source, estimated });
  const factor = strength.value / stress.greatest;
  const burst = burstSpeed(speedRpm, stress.greatest, strength.value);
  const figures = [
    figure('spin.stress', stress.greatest),
    figure('spin.rimStress', stress.rim),
    figure('spin.factor', factor, `${strength.source.text}; over the greatest stress`),
    figure('spin.burst', burst, `${byDisc}; stress grows with the square of the speed`),
  ];
  if (factor >= leastFactor) return { findings: [], figures };
  const allowed = burst / Math.sqrt(leastFactor);
  const values = { measured: factor, limit: leastFactor, material, speed: speedRpm, allowed };
  return { findings: [finding('spin.weak', { subject: 'spin', values })], figures };
}
