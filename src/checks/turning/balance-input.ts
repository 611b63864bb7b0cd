import { alloyDensity, isLoose, type Mold } from '../../mold/index.ts';
import type { PointMass } from '../../physics/index.ts';
import {
  fittings,
  halfDensity,
  halfMaterialOf,
  leftOut,
  metalAlone,
  metalInCavity,
} from '../from-mold/index.ts';
import { type Swappable, swappables } from './best-swap.ts';

interface Placed {
  readonly id: string;
  /** What the filled cavity weighs more than the half's material in its place. */
  readonly excess: PointMass;
  /** Its metal alone, which a misrun leaves out. */
  readonly metal: PointMass;
}

/** What keeps the balance from being found, or from being held to a grade. */
export interface Unknown {
  /** Fields the plan leaves out without which there is no unbalance. */
  readonly masses: readonly string[];
  /** What the plan does name, and no density is at hand for. */
  readonly materials: readonly string[];
  /** Fields without which there is no limit. */
  readonly limit: readonly string[];
  /** Fields without which not all that turns is counted, or the machine's own limit is not looked at. */
  readonly part: readonly string[];
}

/** All that turns; left out is what the plan leaves out. */
export interface BalanceInput {
  readonly unknown: Unknown;
  readonly estimated: boolean;
  readonly placed: readonly Placed[];
  /** With metal in the gates, and before it is poured. */
  readonly fittings: readonly PointMass[];
  readonly fittingsEmpty: readonly PointMass[];
  readonly swappable: readonly Swappable[];
  /** The plain disc. */
  readonly discKg: number;
  readonly discZ: number;
  readonly platesKg?: number;
  /** How far the plates are out of balance by themselves, and how far off the axis the mold may sit, mm. */
  readonly platesGmm?: number;
  readonly centering?: number;
  readonly speedRpm?: number;
  /** Of ISO 21940-11: G and the speed of the center of mass in mm/s. */
  readonly grade?: string;
  readonly machineGmm?: number;
  readonly radius: number;
  readonly lower: number;
  readonly upper: number;
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
    part: leftOut([
      ['machine.plateUnbalance', bench.machine?.plateUnbalanceGmm],
      ['machine.centering', bench.machine?.centering],
      ['machine.maxUnbalance', bench.machine?.maxUnbalanceGmm],
    ]),
  };
}

/** Densities are needed for any figure; speed, grade and plates for the limit only. */
export function balanceInput(mold: Mold): BalanceInput {
  const { bench, disc, placements } = mold;
  const [alloy, half] = [alloyDensity(mold), halfDensity(mold)];
  const fixture = loose(mold) ? halfMaterialOf(mold, mold.fixture.material)?.densityKgM3?.value : 0;
  const known = alloy && half && fixture !== undefined;
  const densities = { alloy: alloy?.value ?? 0, half: half?.value ?? 0, fixture: fixture ?? 0 };
  return {
    unknown: unknownIn(mold, { alloy, half, fixture }),
    estimated:
      !alloy || alloy.estimated || !half || half.estimated || placements.some((one) => one.estimated),
    placed: known
      ? placements.map((one) => ({
          id: one.id,
          excess: metalInCavity(mold, one, densities),
          metal: metalAlone(mold, one, densities),
        }))
      : [],
    fittings: known ? fittings(mold, densities, true) : [],
    fittingsEmpty: known ? fittings(mold, densities, false) : [],
    swappable: known ? swappables(mold, densities) : [],
    discKg: discVolume(mold) * densities.half * 1e-9,
    discZ: (disc.upper - disc.lower) / 2,
    radius: disc.radius,
    lower: disc.lower,
    upper: disc.upper,
    ...limitsOf(bench),
  };
}

const limitsOf = ({ spin, machine }: Mold['bench']) => ({
  ...(spin?.speedRpm !== undefined && { speedRpm: spin.speedRpm }),
  ...(spin?.grade !== undefined && { grade: spin.grade }),
  ...(machine?.plateMassKg !== undefined && { platesKg: machine.plateMassKg }),
  ...(machine?.plateUnbalanceGmm !== undefined && { platesGmm: machine.plateUnbalanceGmm }),
  ...(machine?.centering !== undefined && { centering: machine.centering }),
  ...(machine?.maxUnbalanceGmm !== undefined && { machineGmm: machine.maxUnbalanceGmm }),
});

/** Bosses that are made of the fixtures' material and stay in the halves. */
const loose = ({ process, bosses }: Mold): boolean =>
  bosses.some((boss) => boss.kind !== 'cap nut' && isLoose(boss, process));

/** mm3; the pouring hole and the well stand empty, which makes the rotor lighter and so the limit stricter. */
const discVolume = ({ disc, sprue }: Mold): number =>
  Math.PI *
  (disc.radius ** 2 * (disc.lower + disc.upper) -
    (sprue ? sprue.holeRadius ** 2 * disc.upper + sprue.wellRadius ** 2 * sprue.wellDepth : 0));
