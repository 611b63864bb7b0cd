import { holdersNeeded, openingForce, placesNeeded, speedForRim } from '../physics/index.ts';
import { asNeeded, type Plan, type PlanBench, resolveSize } from '../plan/index.ts';
import { holdingReserve } from '../tables/index.ts';
import type { Bench, Closing } from './bench.ts';

/** Bench and machine as the plan gives them; what follows the disc by a rule is worked out, lengths in mm. */
export function resolveBench(plan: Plan): Bench {
  const { machine, rubber, alloy, cure } = plan;
  const spin = resolveSpin(plan);
  const can = resolveCan(plan);
  const closing = resolveClosing(plan, can);
  return {
    ...(can && { can }),
    ...(closing && { closing }),
    ...(machine && { machine }),
    ...(rubber && { rubber }),
    ...(alloy && { alloy }),
    ...(spin && { spin }),
    ...(cure && { cure }),
  };
}

function resolveCan({ can, disc }: Plan): PlanBench['can'] {
  if (can?.gap === undefined) return can;
  return { ...can, diameter: disc.diameter + can.gap };
}

/** Machines are set to whole rpm. */
function resolveSpin({ spin, disc }: Plan): PlanBench['spin'] {
  if (spin?.rimSpeedMS === undefined) return spin;
  return { ...spin, speedRpm: Math.round(speedForRim(spin.rimSpeedMS, disc.diameter / 2)) };
}

function resolveClosing({ closing, disc }: Plan, can: PlanBench['can']): Closing | undefined {
  if (!closing) return undefined;
  const { bolts, clamps, lid, ...rest } = closing;
  const pressed = { pressurePa: closing.pressurePa, diameter: can?.diameter ?? disc.diameter };
  return {
    ...rest,
    ...(bolts && { bolts: resolveBolts(bolts, disc.diameter) }),
    ...(clamps && { clamps: resolveClamps(clamps, pressed) }),
    ...(lid && { lid: { ...lid, thickness: resolveSize(lid.thickness, disc.diameter) } }),
  };
}

type Given = NonNullable<PlanBench['closing']>;

function resolveBolts(
  { spacing, ...bolts }: NonNullable<Given['bolts']>,
  discDiameter: number,
): NonNullable<Closing['bolts']> {
  const outside = bolts.outsideRim;
  const circle = outside === undefined ? bolts.circle : discDiameter + 2 * outside;
  const count = spacing === undefined ? bolts.count : placesNeeded(circle ?? 0, spacing);
  if (count === undefined) throw new Error('bolts without a number');
  return { ...bolts, ...(circle !== undefined && { circle }), count };
}

/** They are set crosswise, two by two. Our own choice, as is the most that are asked for: more find no room. */
const fewestClamps = 4;
const mostClamps = 60;

function resolveClamps(
  clamps: NonNullable<Given['clamps']>,
  { pressurePa, diameter }: { pressurePa: number | undefined; diameter: number },
): NonNullable<Closing['clamps']> {
  if (clamps.count !== asNeeded) return { ...clamps, count: clamps.count };
  if (pressurePa === undefined || clamps.force === undefined) throw new Error('clamps of no known force');
  const fewest = holdersNeeded(openingForce(pressurePa, diameter), clamps.force, holdingReserve);
  const even = 2 * Math.ceil(fewest / 2);
  return { ...clamps, count: Math.min(mostClamps, Math.max(fewestClamps, even)) };
}
