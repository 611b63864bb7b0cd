import type { Finding } from '../findings/index.ts';
import { type Plan, paperDefault } from '../plan/index.ts';
import { judgeLayout } from './judge-layout.ts';
import { judgeSprue } from './judge-sprue.ts';
import type { Master, Mold } from './mold.ts';
import { makeAlways, type Remember } from './remember.ts';
import { settleBench } from './settle-bench.ts';
import { settleBosses } from './settle-bosses.ts';
import { settleChannels } from './settle-channels.ts';
import { settleDisc, settleFixture, settleLimits, settleSprue } from './settle-disc.ts';
import { settleParting } from './settle-parting.ts';
import { settlePlacements } from './settle-placements.ts';
import { settleRim } from './settle-rim.ts';
import { settleSupports } from './settle-supports.ts';

export interface Layout {
  readonly mold: Mold;
  readonly findings: readonly Finding[];
}

/**
 * Plan and masters to a mold with everything placed and decided. `masters` must hold every master a placement names
 * (else it throws: the caller stops earlier when one cannot be read). Faults of the layout are findings; the mold is
 * complete all the same, so that what they do not concern can still be built. `remember` spares what is found from a master alone, and the parting surface,
 * where nothing it is found from has changed.
 */
export function layOut(plan: Plan, masters: readonly Master[], remember: Remember = makeAlways): Layout {
  const disc = settleDisc(plan);
  const sprue = settleSprue(plan);
  const { placed, findings } = settlePlacements(plan, masters, remember);
  const { bosses, findings: bossFindings } = settleBosses(plan);
  const { tabs, notches } = settleRim(plan, bosses, placed);
  const { channels, findings: channelFindings } = settleChannels(plan, placed, sprue);
  const fixed = { process: plan.process, disc, sprue, bosses, tabs, notches };
  const { surface, findings: partingFindings } = settleParting(plan, placed, fixed, remember);
  const mold: Mold = {
    title: plan.title ?? 'mold',
    units: plan.units,
    revision: plan.revision ?? '',
    paper: plan.paper ?? paperDefault,
    process: plan.process,
    disc,
    ...(sprue && { sprue }),
    masters,
    placements: placed.map(({ mesh: _, ...placement }) => placement),
    bosses,
    supports: settleSupports(plan),
    tabs,
    notches,
    channels,
    parting: surface,
    fixture: settleFixture(plan),
    limits: settleLimits(plan),
    ...(plan.registration?.flex !== undefined && { flex: plan.registration.flex }),
    bench: settleBench(plan),
    ...(plan.severity && { severity: plan.severity }),
  };
  return {
    mold,
    findings: [
      ...findings,
      ...bossFindings,
      ...channelFindings,
      ...partingFindings,
      ...judgeSprue(plan, sprue, disc.upper),
      ...judgeLayout(fixed),
    ],
  };
}
