import { alloyDensity, type Mold } from '../../mold/index.ts';
import { burstSpeed, type DiscStress, discStress } from '../../physics/index.ts';
import type { HalfMaterial } from '../../tables/index.ts';
import { halfMaterialOf, imprintOf } from '../from-mold/index.ts';

/**
 * Tensile strength over the greatest stress. No source sets one for printed halves: our own choice, for what the
 * formula does not see: layers, sockets and thin walls. It stands for half the burst speed.
 */
export const leastFactor = 4;

/** The speed from which on a disc that bursts at `burst` has less than that factor: stress grows with its square. */
export const strainedSpeed = (burst: number): number => burst / Math.sqrt(leastFactor);

export interface RigidHalves {
  readonly material: string;
  /** What is known of that. */
  readonly row?: HalfMaterial;
  readonly radius: number;
  readonly bore: number;
  /** mm3 of both halves without the cavities, and of the cavities. */
  readonly solid: number;
  readonly cavities: number;
  /** Undefined where neither plan nor table tells; then rigid halves cannot be judged. */
  readonly alloyKgM3?: number;
  readonly alloyEstimated: boolean;
}

export function halvesOf(mold: Mold): RigidHalves {
  const { disc, sprue, placements, fixture } = mold;
  const alloy = alloyDensity(mold);
  const bore = sprue?.wellRadius ?? 0;
  const cavities = placements.reduce((sum, one) => sum + imprintOf(mold, one).volume, 0);
  const whole = Math.PI * (disc.radius ** 2 - bore ** 2) * (disc.lower + disc.upper);
  const row = halfMaterialOf(mold, fixture.material);
  return {
    material: fixture.material,
    ...(row && { row }),
    radius: disc.radius,
    // The well is wider than the hole, and the stress at the bore grows with its width.
    bore,
    solid: Math.max(0, whole - cavities),
    cavities,
    ...(alloy && { alloyKgM3: alloy.value }),
    alloyEstimated: alloy?.estimated ?? false,
  };
}

interface Strained {
  readonly stress: DiscStress;
  readonly strengthPa: number;
  readonly strengthSource: string;
  readonly burst: number;
  readonly source: string;
  readonly estimated: boolean;
}

const byDisc =
  'turning disc with a bore as wide as the well (Timoshenko; Roark, ch. 16; Shigley 3-15); metal carried by what is left of the halves';

/** What turning does to the halves; undefined where nothing says how heavy the metal is, or nothing is left of them. */
export function strained(halves: RigidHalves, speedRpm: number): Strained | 'unknown' | undefined {
  const { row, radius, bore, solid, cavities, alloyKgM3, alloyEstimated } = halves;
  const { densityKgM3: own, strengthPa: strength, poisson } = row ?? {};
  if (!own || !strength || !poisson) return 'unknown';
  const metal = cavities > 0 ? alloyKgM3 : 0;
  if (metal === undefined || !(solid > 0 && radius > bore)) return undefined;
  // All the metal hangs on the material that the cavities leave.
  const densityKgM3 = own.value + (metal * cavities) / solid;
  const stress = discStress({ radius, bore, densityKgM3, poisson: poisson.value }, speedRpm);
  return {
    stress,
    strengthPa: strength.value,
    strengthSource: strength.source.text,
    burst: burstSpeed(speedRpm, stress.greatest, strength.value),
    source: byDisc,
    estimated: alloyEstimated || [own, strength, poisson].some(({ source }) => source.kind === 'memory'),
  };
}
