import type { Plan } from '../plan/index.ts';
import { type Advice, advise } from './advise.ts';
import { type AirByBond, type BondRange, bondRange } from './bond-range.ts';
import { type Change, changesByPour, cutSince } from './changes.ts';
import { cutNow } from './cut-now.ts';
import { forecastHits, type Hits } from './forecast-hits.ts';
import { sinceCut, triedChanges } from './helped.ts';
import type { Pour, TrialLog } from './log-schema.ts';
import type { ToldAir } from './rules.ts';
import { type Share, wilson } from './wilson.ts';
import { type Casting, type Cavity, castingsIn, castingsOf, goodBy, isGood } from './yields.ts';

/** What the forecast says of the mold as the plan has it now. */
export interface Forecasts {
  readonly air: ReadonlyMap<string, ToldAir>;
  readonly byBond: AirByBond;
}

/** One pour, what was changed before it, and how many castings came out good of those that were looked at. */
interface PourSummary {
  readonly pour: Pour;
  readonly changes: readonly Change[];
  readonly good: Share;
}

/** All that a log gives back. */
export interface TrialSummary {
  readonly pours: readonly PourSummary[];
  readonly good: Share;
  readonly byMaster: ReadonlyMap<string, Share>;
  /** Of cavities the plan no longer has too, under their old names. */
  readonly byCavity: ReadonlyMap<string, Share>;
  /** How often the forecast was right; left out without one. Only castings of gates and vents as they are now count. */
  readonly hits?: readonly Hits[];
  readonly bonds?: BondRange;
  readonly advice: Advice;
}

/** What came of all pours, and what follows. `cavities` are those of the plan, mm from the axis. */
export function summarize(
  log: TrialLog,
  plan: Plan,
  cavities: readonly Cavity[],
  forecasts?: Forecasts,
): TrialSummary {
  const placed = cavities.map(({ id }) => id);
  const castings = castingsOf(log, placed);
  const master = new Map(cavities.map((one) => [one.id, one.master]));
  const changes = changesByPour(log);
  const asNow = castingsAsNow(log, plan, castings, placed);
  const bonds = forecasts && bondRange(asNow, forecasts.byBond);
  return {
    pours: log.pours.map((pour, i) => ({
      pour,
      changes: changes[i],
      good: shareGood(castingsIn(pour, placed)),
    })),
    good: shareGood(castings),
    byMaster: goodBy(castings, ({ id }) => master.get(id)),
    byCavity: goodBy(castings, ({ id }) => id),
    ...(forecasts && {
      hits: forecastHits(asNow, new Map([...forecasts.air].map(([id, { told }]) => [id, told]))),
    }),
    ...(bonds && { bonds }),
    advice: advise(log, cavities, forecasts?.air ?? new Map()),
  };
}

/** Castings of cavities whose gates and vents were as the plan has them now. */
function castingsAsNow(
  log: TrialLog,
  plan: Plan,
  castings: readonly Casting[],
  placed: readonly string[],
): Casting[] {
  const tried = triedChanges(log, placed);
  const changed = cutSince(log, cutNow(plan));
  return castings.filter(({ id, pour }) => !changed.has(id) && pour >= sinceCut(id, tried));
}

const shareGood = (castings: readonly Casting[]): Share =>
  wilson(castings.filter(isGood).length, castings.length);
