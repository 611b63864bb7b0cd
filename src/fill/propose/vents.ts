import type { Point2 } from '../../geometry/index.ts';
import { heightAt } from '../../mold/index.ts';
import { channelDefaults } from '../../plan/index.ts';
import type { Pocket } from '../conditions.ts';
import { leastPocket } from '../pockets.ts';
import type { Listed } from './lists.ts';
import { openingsFor } from './openings.ts';
import {
  airIn,
  airWith,
  entryAt,
  fitted,
  inMold,
  mouthOf,
  type Side,
  sideOf,
  stubAt,
  type Trial,
  type Way,
} from './trial.ts';

/** Most vents of one cavity: where legs and claws each end blind, each takes one. Two count as few. Our own choice. */
const mostVents = 12;
/** Rounds in which ways out are sought for what air the ones before left. */
const mostRounds = 3;
/** A way out that leaves less than this share of a pocket need not be bettered. Our own choice. */
const goodEnough = 0.1;

type Air = Pick<Pocket, 'volume' | 'where' | 'sealedBy'>;

/** A vent, or a second gate, that lets the air of a pocket out. */
export interface ProposedWay {
  readonly way: Way;
  readonly side: Side;
  /** The air it lets out, mm3, and what shut it in. */
  readonly frees: Air;
}

/** Air that is left all the same, and why. Lengths in mm. */
export interface AirLeft {
  readonly pocket: Pocket;
  readonly why:
    | { readonly reason: 'no-way' | 'no-help' | 'enough' }
    /** Over, or under, the parting surface or within the outline: no knife comes there. */
    | { readonly reason: 'away'; readonly away: number; readonly over: number };
}

export interface Vented {
  readonly ways: readonly ProposedWay[];
  readonly air: number;
}

/** What gates and vents are cut like. */
export interface Specs {
  readonly gate: Listed;
  readonly vent: Listed;
}

/** Ways out for all the air that stays behind gates, as far as they find room and let any out: vents, and where none does a gate more. */
export function ventsFor(trial: Trial, gates: readonly Way[], specs: Specs): Vented {
  const waysOf = (ways: readonly ProposedWay[]): Way[] => [...gates, ...ways.map(({ way }) => way)];
  let ways: readonly ProposedWay[] = [];
  let pockets = airWith(trial, gates) ?? [];
  for (const sort of ['vent', 'gate'] as const) {
    for (let round = 0; round < mostRounds && pockets.length > 0; round++) {
      const before = ways.length;
      for (const pocket of pockets) {
        if (ways.length >= mostVents) break;
        const found = wayOut(trial, sort, specs[sort], pocket, waysOf(ways));
        if (found) ways = [...ways, found];
      }
      if (ways.length === before) break;
      pockets = airWith(trial, waysOf(ways)) ?? [];
    }
  }
  const kept = pruned(trial, gates, ways, airIn(pockets));
  const left = airWith(trial, waysOf(kept)) ?? [];
  return { ways: kept, air: airIn(left) };
}

interface Mouth {
  readonly at: Point2;
  readonly spec: Listed;
  readonly air: number;
}

/** Mouths that would let air of a pocket out, those that leave least first; among alike the last sealed. */
function mouthsFor(
  trial: Trial,
  sort: Way['sort'],
  spec: Listed,
  pocket: Pocket,
  beside: readonly Way[],
): Mouth[] {
  const openings = openingsFor(trial, pocket);
  if ('away' in openings) return [];
  const now = airIn(airWith(trial, beside) ?? []);
  const { half = channelDefaults[sort].half } = spec;
  const tried = (half: 'lower' | 'upper'): Mouth[] =>
    openings.at.map((at) => {
      const one = half === (spec.half ?? channelDefaults[sort].half) ? spec : { ...spec, half };
      return { at, spec: one, air: airIn(airWith(trial, beside, [stubAt(trial, sort, one, at)]) ?? []) };
    });
  const helps = ({ air }: Mouth): boolean => air <= now - leastPocket;
  const usual = tried(half).filter(helps);
  // The other half only where the usual one does not reach the pocket.
  const mouths = usual.length > 0 ? usual : tried(half === 'upper' ? 'lower' : 'upper').filter(helps);
  const enough = now - (1 - goodEnough) * pocket.volume;
  const rank = ({ air }: Mouth): number => Math.max(air, enough);
  return mouths.sort((a, b) => rank(a) - rank(b));
}

function wayOut(
  trial: Trial,
  sort: Way['sort'],
  spec: Listed,
  pocket: Pocket,
  beside: readonly Way[],
): ProposedWay | undefined {
  const now = airIn(airWith(trial, beside) ?? []);
  for (const { at, spec: one } of mouthsFor(trial, sort, spec, pocket, beside)) {
    const way = fitted(trial, sort, one, entryAt(trial.kind[0], at), beside);
    if (!way || airIn(airWith(trial, [...beside, way]) ?? []) > now - leastPocket) continue;
    const { volume, where, sealedBy } = pocket;
    return { way, side: sideOf(trial.kind[0], mouthOf(way)), frees: { volume, where, sealedBy } };
  }
  return undefined;
}

/** Without those that are not missed: the least first. */
function pruned(
  trial: Trial,
  gates: readonly Way[],
  ways: readonly ProposedWay[],
  before: number,
): readonly ProposedWay[] {
  let [kept, air] = [ways, before];
  const leastFirst = [...ways].sort((a, b) => a.frees.volume - b.frees.volume);
  for (const one of leastFirst) {
    const others = kept.filter((other) => other !== one);
    const left = airIn(airWith(trial, [...gates, ...others.map(({ way }) => way)]) ?? []);
    if (left < air + leastPocket) [kept, air] = [others, left];
  }
  return kept;
}

/** Air that stays with so many ways out proposed, each pocket with why there is none for it. */
export const airLeftOver = (
  trial: Trial,
  specs: Specs,
  ways: readonly Way[],
  count: number,
): readonly AirLeft[] =>
  (airWith(trial, ways) ?? []).map((pocket) => whyLeft(trial, specs, pocket, count >= mostVents, ways));

function whyLeft(
  trial: Trial,
  specs: Specs,
  pocket: Pocket,
  isFull: boolean,
  beside: readonly Way[],
): AirLeft {
  const openings = openingsFor(trial, pocket);
  if ('away' in openings) {
    const [x, y, z] = inMold(trial.kind, pocket.place);
    const over = z - heightAt(trial.mold.parting, x, y);
    return { pocket, why: { reason: 'away', away: openings.away, over } };
  }
  if (isFull) return { pocket, why: { reason: 'enough' } };
  const helps = (['vent', 'gate'] as const).some(
    (sort) => mouthsFor(trial, sort, specs[sort], pocket, beside).length > 0,
  );
  return { pocket, why: { reason: helps ? 'no-way' : 'no-help' } };
}
