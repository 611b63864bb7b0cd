import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  type Judged,
  makeFigure,
} from '../../findings/index.ts';
import { type Check, check, isLoose, type Mold } from '../../mold/index.ts';
import {
  angleOf,
  type PointMass,
  permissibleUnbalance,
  planeShares,
  planeUnbalances,
  sizeOf,
  staticUnbalance,
  type Unbalance,
} from '../../physics/index.ts';
import {
  alloyDensity,
  fittings,
  halfDensity,
  halfMaterialOf,
  leftOut,
  metalAlone,
  metalInCavity,
} from '../from-mold/index.ts';
import { bestSwap, type Swappable, swappables } from './best-swap.ts';

const bySums = 'sum of m r over metal against the half it displaces, nuts, tabs, notches and channels';
const byStandard = 'ISO 21940-11:2016 (formerly ISO 1940-1)';

interface Placed {
  readonly id: string;
  /** What the filled cavity weighs more than the half's material in its place. */
  readonly excess: PointMass;
  /** Its metal alone, which a misrun leaves out. */
  readonly metal: PointMass;
}

interface BalanceInput {
  readonly unknown: Unknown;
  readonly estimated: boolean;
  readonly placed: readonly Placed[];
  readonly fittings: readonly PointMass[];
  readonly swappable: readonly Swappable[];
  /** The plain disc and the plates, both in balance by themselves. */
  readonly discKg: number;
  readonly discZ: number;
  readonly platesKg?: number;
  readonly speedRpm?: number;
  /** Of ISO 21940-11: G and the speed of the center of mass in mm/s. */
  readonly grade?: string;
  readonly machineGmm?: number;
  readonly radius: number;
  readonly lower: number;
  readonly upper: number;
}

/** What keeps the balance from being found, or from being held to a grade. */
interface Unknown {
  /** Fields the plan leaves out without which there is no unbalance. */
  readonly masses: readonly string[];
  /** What the plan does name, and no density is at hand for. */
  readonly materials: readonly string[];
  /** Fields without which there is no limit. */
  readonly limit: readonly string[];
}

/** How far the filled mold is out of balance, as cast, and with its heaviest cavity left empty. */
export const balance: Check = check<BalanceInput>({
  id: 'balance',
  title: 'Balance',
  follows: false,
  processes: ['rubber', 'rigid'],
  units: (mold) => (mold.placements.length > 0 ? [{ subject: 'mold', about: [], input: inputOf(mold) }] : []),
  run: (input) => {
    const note = notChecked(input.unknown);
    if (input.placed.length === 0) return { findings: note };
    const masses = [...input.placed.map(({ excess }) => excess), ...input.fittings];
    const judged = judge(input, masses);
    return { findings: [...note, ...judged.findings], figures: judged.figures };
  },
});

function notChecked({ masses, materials: material, limit }: Unknown): Finding[] {
  const subject = 'mold';
  if (masses.length + material.length > 0) {
    const values = { which: 'nothing', missing: masses, material, held: limit } as const;
    return [finding('balance.not-checked', { subject, values })];
  }
  if (limit.length === 0) return [];
  return [finding('balance.not-checked', { subject, values: { which: 'grade', missing: limit } })];
}

function unknownIn(
  mold: Mold,
  { alloy, half, fixture }: Record<'alloy' | 'half' | 'fixture', unknown>,
): Unknown {
  const { process, bench, fixture: made } = mold;
  const rigid = process === 'rigid';
  const material = made.assumed ? undefined : made.material;
  const asked = [
    ['alloy.density', bench.alloy?.name, alloy],
    rigid ? ['fixture.material', material, half] : ['rubber.density', bench.rubber?.compound, half],
    ['fixture.material', material, fixture],
  ] as const satisfies readonly (readonly [place: string, name: string | undefined, density: unknown])[];
  const lacking = asked.filter(([, , density]) => density === undefined);
  const named = lacking.flatMap(([, name]) => (name === undefined ? [] : [name]));
  return {
    masses: [...new Set(lacking.flatMap(([place, name]) => (name === undefined ? [place] : [])))],
    materials: [...new Set(named)],
    limit: leftOut([
      ['spin.speed', bench.spin?.speedRpm],
      ['spin.grade', bench.spin?.grade],
      ['machine.plateMass', bench.machine?.plateMassKg],
    ]),
  };
}

/** Densities are needed for any figure; speed, grade and plates for the limit only. */
function inputOf(mold: Mold): BalanceInput {
  const { bench, disc, placements } = mold;
  const [alloy, half] = [alloyDensity(mold), halfDensity(mold)];
  const fixture = loose(mold) ? halfMaterialOf(mold, mold.fixture.material)?.densityKgM3?.value : 0;
  const { spin, machine } = bench;
  const known = alloy && half && fixture !== undefined;
  const densities = { alloy: alloy?.value ?? 0, half: half?.value ?? 0, fixture: fixture ?? 0 };
  return {
    unknown: unknownIn(mold, { alloy, half, fixture }),
    // The density of steel nuts is from memory.
    estimated:
      !alloy || alloy.estimated || !half || half.estimated || placements.some((one) => one.estimated),
    placed: known
      ? placements.map((one) => ({
          id: one.id,
          excess: metalInCavity(mold, one, densities),
          metal: metalAlone(mold, one, densities),
        }))
      : [],
    fittings: known ? fittings(mold, densities) : [],
    swappable: known ? swappables(mold, densities) : [],
    discKg: discVolume(mold) * densities.half * 1e-9,
    discZ: (disc.upper - disc.lower) / 2,
    radius: disc.radius,
    lower: disc.lower,
    upper: disc.upper,
    ...(spin?.speedRpm !== undefined && { speedRpm: spin.speedRpm }),
    ...(spin?.grade !== undefined && { grade: spin.grade }),
    ...(machine?.plateMassKg !== undefined && { platesKg: machine.plateMassKg }),
    ...(machine?.maxUnbalanceGmm !== undefined && { machineGmm: machine.maxUnbalanceGmm }),
  };
}

/** Bosses that are made of the fixtures' material and stay in the halves. */
const loose = ({ process, bosses }: Mold): boolean =>
  bosses.some((boss) => boss.kind !== 'cap nut' && isLoose(boss, process));

/** mm3; the pouring hole and the well stand empty, which makes the rotor lighter and so the limit stricter. */
const discVolume = ({ disc, sprue }: Mold): number =>
  Math.PI *
  (disc.radius ** 2 * (disc.lower + disc.upper) -
    (sprue ? sprue.holeRadius ** 2 * disc.upper + sprue.wellRadius ** 2 * sprue.wellDepth : 0));

function judge(input: BalanceInput, masses: readonly PointMass[]): Judged {
  const figure = (name: FigureName, value: number, source: string, subject = 'mold'): Figure =>
    makeFigure(name, { subject, value, source, estimated: input.estimated });
  const all = staticUnbalance(masses);
  const planes = planeUnbalances(masses, -input.lower, input.upper);
  const misrun = worstMisrun(all, input.placed);
  const figures = [
    figure('balance.static', sizeOf(all), bySums),
    figure('balance.angle', angleOf(all), bySums),
    figure('balance.lower', sizeOf(planes.a), `${bySums}, shared by the lever rule`),
    figure('balance.upper', sizeOf(planes.b), `${bySums}, shared by the lever rule`),
    figure('balance.misrun', misrun.size, `${bySums}, the metal of one cavity left out`, misrun.id),
    figure('balance.correction', sizeOf(all) / input.radius, 'unbalance over the radius of the rim'),
  ];
  const rotor = rotorOf(input, masses);
  const findings = [...againstMachine(input, all, misrun)];
  if (rotor) {
    figures.push(figure('balance.rotor', rotor.massKg, 'halves, metal, nuts and plates'));
    const { speedRpm: speed, grade } = input;
    if (speed !== undefined && grade !== undefined) {
      const allowed = permissibleUnbalance(Number(grade.slice(1)), rotor.massKg, speed);
      figures.push(figure('balance.permissible', allowed, byStandard));
      const shares = planeShares(rotor.z, -input.lower, input.upper);
      findings.push(
        ...overGrade(input, { grade, speed }, all, allowed, [
          ['lower', sizeOf(planes.a), shares.a * allowed],
          ['upper', sizeOf(planes.b), shares.b * allowed],
        ]),
      );
    }
  }
  return { findings, figures };
}

function rotorOf(
  { discKg, discZ, platesKg, lower, upper }: BalanceInput,
  masses: readonly PointMass[],
): { readonly massKg: number; readonly z: number } | undefined {
  if (platesKg === undefined) return undefined;
  const added = masses.reduce((sum, { massG }) => sum + massG / 1000, 0);
  const moment = masses.reduce((sum, { massG, z }) => sum + (massG * z) / 1000, discKg * discZ);
  const massKg = discKg + added + platesKg;
  // Plates lie on both faces alike.
  return { massKg, z: (moment + (platesKg * (upper - lower)) / 2) / massKg };
}

interface Misrun {
  readonly id: string;
  readonly size: number;
}

/** The one empty cavity that leaves the largest unbalance. */
function worstMisrun(all: Unbalance, placed: readonly Placed[]): Misrun {
  let worst: Misrun = { id: placed[0].id, size: -1 };
  for (const { id, metal } of placed) {
    const [x, y] = staticUnbalance([metal]);
    const size = sizeOf([all[0] - x, all[1] - y]);
    if (size > worst.size) worst = { id, size };
  }
  return worst;
}

function againstMachine({ machineGmm: limit }: BalanceInput, all: Unbalance, misrun: Misrun): Finding[] {
  if (limit === undefined) return [];
  const size = sizeOf(all);
  if (size > limit)
    return [finding('balance.machine', { subject: 'mold', values: { measured: size, limit } })];
  if (misrun.size <= limit) return [];
  return [finding('balance.misrun', { subject: misrun.id, values: { measured: misrun.size, limit } })];
}

type PlaneVerdict = readonly [half: 'lower' | 'upper', size: number, limit: number];

/** The grade and the speed it is taken at. */
interface Held {
  readonly grade: string;
  readonly speed: number;
}

function overGrade(
  input: BalanceInput,
  held: Held,
  all: Unbalance,
  allowed: number,
  planes: readonly PlaneVerdict[],
): Finding[] {
  const subject = 'mold';
  const size = sizeOf(all);
  if (size > allowed) {
    const values = {
      which: 'whole',
      measured: size,
      limit: allowed,
      ...held,
      ...waysToBalance(input, all),
    } as const;
    return [finding('balance.over', { subject, values })];
  }
  const over = planes
    .filter(([, found, limit]) => found > limit)
    .sort((a, b) => b[1] / b[2] - a[1] / a[2])[0];
  if (!over) return [];
  const [half, measured, limit] = over;
  return [finding('balance.over', { subject, values: { which: 'face', half, measured, limit, ...held } })];
}

/** What balances the heavy side: a mass at the rim, a swap that mends most of it, a dummy cavity opposite. */
function waysToBalance({ radius, swappable, placed, fittings }: BalanceInput, all: Unbalance) {
  const size = sizeOf(all);
  const heavy = angleOf(all);
  const swap = bestSwap(swappable, [...placed.map(({ excess }) => excess), ...fittings]);
  const reach = Math.max(...placed.map(({ excess }) => Math.hypot(excess.x, excess.y)));
  return {
    heavy,
    weight: size / radius,
    opposite: (heavy + 180) % 360,
    ...(swap && swap.size < 0.8 * size && { swap: swap.a, swapWith: swap.b, swapLeaves: swap.size }),
    ...(reach > 0 && { dummy: size / reach, dummyRadius: reach }),
  };
}
