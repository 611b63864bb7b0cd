import { expandPlacements, type Plan, placementsNamed } from '../plan/index.ts';
import type { Support } from './mold.ts';
import { resolveFixture } from './resolve-disc.ts';

/**
 * Placements that get a build-up: those named, or with `auto` all, as many as need one. An entry that gives no
 * clearance takes that of the fixtures; of two entries that name one placement the later counts.
 */
export function resolveSupports(plan: Plan): Support[] {
  const flat = expandPlacements(plan);
  const usual = resolveFixture(plan).clearance;
  if (plan.supports === undefined) return [];
  if (plan.supports === 'auto') return flat.map(({ id }) => ({ placement: id, clearance: usual }));
  const wished = new Map(
    plan.supports.flatMap(({ placements, clearance = usual, material }) =>
      placements
        .flatMap((name) => placementsNamed(flat, name))
        .map(
          (id) => [id, { placement: id, clearance, ...(material !== undefined && { material }) }] as const,
        ),
    ),
  );
  return flat.flatMap(({ id }) => wished.get(id) ?? []);
}
