import type { TextPlace } from '../findings/index.ts';
import { holdersNeeded, openingForce, placesNeeded, speedForRim } from '../physics/index.ts';
import { asNeeded, type Plan, type PlanBench, resolveSize } from '../plan/index.ts';
import { holdingReserve } from '../tables/index.ts';
import type { Bench, Closing } from './bench.ts';

/** Bench and machine as the plan gives them; what follows the disc by a rule is worked out, lengths in mm. */
export function resolveBench(plan: Plan): Bench {
  const { diameter } = plan.disc;
  const { closing: given, ...rest } = sectionsOf(plan);
  const can = rest.can && resolveCan(rest.can, diameter);
  const spin = rest.spin && resolveSpin(rest.spin, diameter);
  const closing = given && resolveClosing(given, can, diameter);
  return { ...rest, ...(can && { can }), ...(spin && { spin }), ...(closing && { closing }) };
}

/** The sections without their places in the text, which the mold has apart. */
function sectionsOf({
  can,
  closing,
  machine,
  rubber,
  alloy,
  spin,
  cure,
  pouring,
  order,
  prices,
}: Plan): PlanBench {
  return {
    ...(can && { can: unplaced(can) }),
    ...(closing && { closing: unplaced(closing) }),
    ...(machine && { machine: unplaced(machine) }),
    ...(rubber && { rubber: unplaced(rubber) }),
    ...(alloy && { alloy: unplaced(alloy) }),
    ...(spin && { spin: unplaced(spin) }),
    ...(cure && { cure: unplaced(cure) }),
    ...(pouring && { pouring: unplaced(pouring) }),
    ...(order && { order: unplaced(order) }),
    ...(prices && { prices: unplaced(prices) }),
  };
}

const unplaced = <T extends { readonly at: TextPlace }>({ at: _, ...section }: T): Omit<T, 'at'> => section;

type Section<K extends keyof PlanBench> = NonNullable<PlanBench[K]>;

function resolveCan(can: Section<'can'>, discDiameter: number): Section<'can'> {
  return can.gap === undefined ? can : { ...can, diameter: discDiameter + can.gap };
}

/** Machines are set to whole rpm. */
function resolveSpin(spin: Section<'spin'>, discDiameter: number): Section<'spin'> {
  if (spin.rimSpeedMS === undefined) return spin;
  return { ...spin, speedRpm: Math.round(speedForRim(spin.rimSpeedMS, discDiameter / 2)) };
}

function resolveClosing(closing: Given, can: PlanBench['can'], discDiameter: number): Closing {
  const { bolts, clamps, lid, ...rest } = closing;
  const pressed = { pressurePa: closing.pressurePa, diameter: can?.diameter ?? discDiameter };
  return {
    ...rest,
    ...(bolts && { bolts: resolveBolts(bolts, discDiameter) }),
    ...(clamps && { clamps: resolveClamps(clamps, pressed) }),
    ...(lid && { lid: { ...lid, thickness: resolveSize(lid.thickness, discDiameter) } }),
  };
}

type Given = Section<'closing'>;

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
