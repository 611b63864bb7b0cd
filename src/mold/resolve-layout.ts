import type { Finding } from '../findings/index.ts';
import { type Plan, paperDefault } from '../plan/index.ts';
import { judgeLayout } from './judge-layout.ts';
import { judgeSizes } from './judge-sizes.ts';
import { judgeSprue } from './judge-sprue.ts';
import { type Memoize, makeAlways } from './memoize.ts';
import type { Master, Mold } from './mold.ts';
import { resolveBench } from './resolve-bench.ts';
import { resolveBosses } from './resolve-bosses.ts';
import { resolveChannels } from './resolve-channels.ts';
import { resolveDisc, resolveFixture, resolveLimits, resolveSprue } from './resolve-disc.ts';
import { resolveParting } from './resolve-parting.ts';
import { resolvePins } from './resolve-pins.ts';
import { resolvePlacements } from './resolve-placements.ts';
import { resolvePlaces } from './resolve-places.ts';
import { resolveRim } from './resolve-rim.ts';
import { idleRunners } from './resolve-runners.ts';
import { resolveSupports } from './resolve-supports.ts';

export interface Layout {
  readonly mold: Mold;
  readonly findings: readonly Finding[];
}

/**
 * Plan and masters to a mold with everything placed and decided. `masters` must hold every master a placement names
 * (else it throws: the caller stops earlier when one cannot be read). Faults of the layout are findings; the mold is
 * complete all the same, so that what they do not concern can still be built. `memoize` spares what is found from a master alone, and the parting surface,
 * where nothing it is found from has changed.
 */
export function resolveLayout(plan: Plan, masters: readonly Master[], memoize: Memoize = makeAlways): Layout {
  const disc = resolveDisc(plan);
  const sprue = resolveSprue(plan);
  const { placed, findings } = resolvePlacements(plan, masters, memoize);
  const { bosses, findings: bossFindings } = resolveBosses(plan);
  const { tabs, notches } = resolveRim(plan, bosses, placed);
  const fixed = { process: plan.process, disc, sprue, bosses, tabs, notches };
  const [bench, limits] = [resolveBench(plan), resolveLimits(plan)];
  const ground = { ...fixed, placed, bench, wall: limits.wall };
  const { channels, findings: channelFindings } = resolveChannels(plan, ground, memoize);
  const { surface, findings: partingFindings } = resolveParting(plan, placed, fixed, memoize);
  const { pins: ventPins, findings: pinFindings } = resolvePins(plan, ground, surface);
  const mold: Mold = {
    title: plan.title ?? 'mold',
    units: plan.units,
    revision: plan.revision ?? '',
    paper: plan.paper ?? paperDefault[plan.units],
    process: plan.process,
    disc,
    ...(sprue && { sprue }),
    masters,
    placements: placed.map(({ mesh: _, ...placement }) => placement),
    bosses,
    supports: resolveSupports(plan),
    tabs,
    notches,
    channels,
    ventPins,
    parting: surface,
    fixture: resolveFixture(plan),
    ...(plan.materials && {
      materials: Object.entries(plan.materials).map(([name, sheet]) => ({ name, ...sheet })),
    }),
    limits,
    ...(plan.registration?.flex !== undefined && { flex: plan.registration.flex }),
    bench,
    places: resolvePlaces(plan),
    ...(plan.severity && { severity: plan.severity }),
  };
  return {
    mold,
    findings: [
      ...findings,
      ...bossFindings,
      ...channelFindings,
      ...idleRunners(plan, channels),
      ...partingFindings,
      ...pinFindings,
      ...judgeSizes(plan),
      ...judgeSprue(plan, sprue, disc),
      ...judgeLayout(fixed),
    ],
  };
}
