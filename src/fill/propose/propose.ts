import {
  type Channel,
  channelId,
  type DrawAnew,
  drawAnew,
  type Memoize,
  type Mold,
  type Placement,
} from '../../mold/index.ts';
import type { Plan } from '../../plan/index.ts';
import { type CavityForecast, cavityRoom } from '../cavity.ts';
import { cavityOf, channelsOf, conditionsOf, isParted, missingIn, sweptIn } from '../of-mold.ts';
import { bestGate, type Gated, type ProposedGate } from './gates.ts';
import { asPlanLists, kindsIn, type Listed, type Lists, listsOf, parentsIn, without } from './lists.ts';
import type { Trial } from './trial.ts';
import { type ProposedVent, ventsFor } from './vents.ts';

/** What is proposed for like placements. */
export interface Proposal {
  readonly placements: readonly string[];
  /** Left out where somebody chose the gate, which stays, or none finds room. */
  readonly gate?: ProposedGate;
  readonly vents: readonly ProposedVent[];
  /** Of the first of them, with the plan's gates and vents and with these. Left out where no gate opens into it. */
  readonly before?: CavityForecast;
  readonly after?: CavityForecast;
}

export interface Proposed {
  readonly proposals: readonly Proposal[];
  /** All gates and vents of the plan with them, each placement named by itself. */
  readonly lists: Lists;
}

type Step = (step: { readonly title: string; readonly done: number; readonly total: number }) => void;

/** Gates and vents for every kind of cavity, one after the other; what somebody chose stays. Or what the plan does not say. */
export function proposeChannels(
  plan: Plan,
  mold: Mold,
  { memoize, progress }: { readonly memoize?: Memoize; readonly progress?: Step } = {},
): Proposed | { readonly missing: readonly string[] } {
  const conditions = conditionsOf(mold);
  if (!conditions) return { missing: missingIn(mold) };
  const anew = drawAnew(plan, mold, memoize);
  const kinds = kindsIn(plan, mold).filter(([one]) => isParted(mold, one));
  let lists = listsOf(plan);
  const parents = parentsIn(lists);
  const found: { readonly kind: readonly Placement[]; readonly room: Trial['room']; gated: Gated }[] = [];
  for (const [done, kind] of kinds.entries()) {
    const [first] = kind;
    progress?.({ title: `gates and vents of ${first.id}`, done, total: kinds.length });
    const ids = new Set(kind.map(({ id }) => id));
    const gates = without(lists.gates, ids, parents);
    const vents = without(lists.vents, ids, parents);
    const base: Lists = { gates: gates.kept, vents: vents.kept };
    const drawn = anew.draw(asPlanLists(base)).filter(({ placement }) => !ids.has(placement));
    const room = cavityRoom(cavityOf(mold, first, conditions).problem);
    const trial: Trial = { mold, kind, room, anew, base, drawn };
    const gated = gatedBy(trial, gates.gone[0], vents.gone[0], plan.disc.at);
    found.push({ kind, room, gated });
    lists = {
      gates: [...base.gates, ...(gated.gate ? [gated.gate.listed] : [])],
      vents: [...base.vents, ...gated.vents.map(({ listed }) => listed)],
    };
  }
  const proposed = found.flatMap(({ gated: { gate, vents } }) => [
    ...(gate ? [gate.listed] : []),
    ...vents.map(({ listed }) => listed),
  ]);
  const kept = drawable(anew, lists, new Set(proposed));
  const channels = anew.draw(asPlanLists(kept));
  return { lists: kept, proposals: found.map((one) => told(mold, one, kept, channels)) };
}

/** With what the plan's own spoke says of width, depth and half. */
function gatedBy(trial: Trial, gate: Listed | undefined, vent: Listed | undefined, at: Listed['at']): Gated {
  const { kind, base } = trial;
  const plain: Listed = { placements: [], at };
  const spec = { gate: gate ?? plain, vent: vent ?? plain };
  const hasGate = base.gates.some(({ placements }) => placements.includes(kind[0].id));
  if (hasGate) return ventsFor(trial, [], spec.vent);
  return bestGate(trial, spec) ?? { vents: [] };
}

/**
 * Without what finds no room once all is drawn together: a way that was routed first goes round what came later, and may find
 * none. What is left may do with less room, so it is asked again.
 */
function drawable(anew: DrawAnew, all: Lists, proposed: ReadonlySet<Listed>): Lists {
  const channels = anew.draw(asPlanLists(all));
  const fits = (sort: Channel['kind'], list: readonly Listed[], i: number): boolean =>
    list[i].placements.every((id) => {
      const number = list.slice(0, i + 1).filter(({ placements }) => placements.includes(id)).length;
      const channel = channels.find((one) => one.id === channelId(sort, id, number));
      return channel !== undefined && anew.isFree(channel, channels);
    });
  const kept = (sort: Channel['kind'], list: readonly Listed[]): Listed[] =>
    list.filter((one, i) => !proposed.has(one) || fits(sort, list, i));
  const left: Lists = { gates: kept('gate', all.gates), vents: kept('vent', all.vents) };
  const isWhole = left.gates.length === all.gates.length && left.vents.length === all.vents.length;
  return isWhole ? left : drawable(anew, left, proposed);
}

function told(
  mold: Mold,
  {
    kind,
    room,
    gated,
  }: { readonly kind: readonly Placement[]; readonly room: Trial['room']; readonly gated: Gated },
  { gates, vents }: Lists,
  channels: readonly Channel[],
): Proposal {
  const [first] = kind;
  const own = channels.filter(({ placement }) => placement === first.id);
  const [before, after] = [channelsOf(mold, first.id), own].map((some) =>
    room.forecast(sweptIn(mold, first, some)),
  );
  return {
    placements: kind.map(({ id }) => id),
    ...(gated.gate && gates.includes(gated.gate.listed) && { gate: gated.gate }),
    vents: gated.vents.filter(({ listed }) => vents.includes(listed)),
    ...(before && { before }),
    ...(after && { after }),
  };
}
