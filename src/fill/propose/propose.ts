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
import { type CavityForecast, type CavityRoom, cavityRoom } from '../cavity.ts';
import { cavityOf, channelsOf, conditionsOf, isParted, missingIn, sweptIn } from '../of-mold.ts';
import { bestGate, type Gated, type ProposedGate } from './gates.ts';
import { asPlanLists, kindsIn, type Listed, type Lists, listsOf, parentsIn, without } from './lists.ts';
import { airIn, type Trial, type Way } from './trial.ts';
import { type AirLeft, airLeftOver, type ProposedWay, type Specs, ventsFor } from './vents.ts';

/** What is proposed for like placements. */
export interface Proposal {
  readonly placements: readonly string[];
  /** Left out where somebody chose the gate, which stays, or none finds room. */
  readonly gate?: ProposedGate;
  /** Vents, and gates more where no vent finds a way. */
  readonly ways: readonly ProposedWay[];
  /** Air that stays under the usual assumption, and why nothing more is done about it. */
  readonly left: readonly AirLeft[];
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

/** Like cavities, what the plan's own spokes say of width, depth and half, and what was found for them. */
interface Found {
  readonly kind: readonly Placement[];
  readonly room: CavityRoom;
  readonly specs: Specs;
  /** The plan's own gates, which nobody chose: they stay where no other is found. */
  readonly spokes: readonly Listed[];
  readonly gated: Gated;
}

/** Times that what finds no room once all is drawn together is sought anew. */
const mostRepairs = 2;

/** Gates and vents for every kind of cavity, one after the other; what somebody chose stays. Or what the plan does not say. */
export function proposeChannels(
  plan: Plan,
  mold: Mold,
  {
    memoize,
    progress,
    only,
  }: {
    readonly memoize?: Memoize;
    readonly progress?: Step;
    /** A placement: for it and its like alone. Left out, for all. */
    readonly only?: string | undefined;
  } = {},
): Proposed | { readonly missing: readonly string[] } {
  const conditions = conditionsOf(mold);
  if (!conditions) return { missing: missingIn(mold) };
  const anew = drawAnew(plan, mold, memoize);
  const cavities = kindsIn(plan, mold)
    .filter(([one]) => isParted(mold, one))
    .filter((kind) => only === undefined || kind.some(({ id }) => id === only))
    .map((kind) => cavityOfKind(mold, kind, conditions));
  // Room is scarce: where most air stays is served first.
  const byAir = [...cavities].sort((a, b) => b.air - a.air);
  let lists = listsOf(plan);
  let channels = anew.draw(asPlanLists(lists));
  const parents = parentsIn(lists);
  const found: Found[] = [];
  for (const [done, { kind, room }] of byAir.entries()) {
    const [first] = kind;
    progress?.({ title: `gates and vents of ${first.id}`, done, total: byAir.length });
    const ids = new Set(kind.map(({ id }) => id));
    const [gates, vents] = [lists.gates, lists.vents].map((list) => without(list, ids, parents));
    const plain: Listed = { placements: [], at: plan.disc.at };
    const specs = { gate: gates.gone[0] ?? plain, vent: vents.gone[0] ?? plain };
    const base: Lists = { gates: gates.kept, vents: vents.kept };
    const about = { kind, room, specs, spokes: gates.gone };
    const others = channels.filter(({ placement }) => !ids.has(placement));
    const one = { ...about, gated: gatedIn(mold, anew, { base, others }, about) };
    found.push(one);
    lists = withThese(base, one);
    channels = anew.draw(asPlanLists(lists), others);
  }
  const settled = repaired(mold, anew, lists, found);
  const inOrder = cavities.flatMap(({ kind }) => settled.found.filter((one) => one.kind === kind));
  return told(mold, anew, { ...settled, found: inOrder });
}

function cavityOfKind(
  mold: Mold,
  kind: readonly Placement[],
  conditions: Parameters<typeof cavityOf>[2],
): Pick<Found, 'kind' | 'room'> & { readonly air: number } {
  const { problem } = cavityOf(mold, kind[0], conditions);
  const room = cavityRoom(problem);
  const pockets = room.air(problem.channels);
  return { kind, room, air: pockets ? airIn(pockets) : 0 };
}

/** Others stay as they are drawn: routed anew, they would take the room that is free for the moment. */
function gatedIn(
  mold: Mold,
  anew: DrawAnew,
  { base, others }: { readonly base: Lists; readonly others: readonly Channel[] },
  { kind, room, specs, spokes }: Omit<Found, 'gated'>,
): Gated {
  const trialIn = (lists: Lists): Trial => {
    const drawn = anew.draw(asPlanLists(lists), others);
    return { mold, kind, room, anew, drawn, known: new Map() };
  };
  const hasGate = base.gates.some(({ placements }) => placements.includes(kind[0].id));
  const best = hasGate ? undefined : bestGate(trialIn(base), specs);
  return best ?? ventsFor(trialIn({ ...base, gates: [...base.gates, ...spokes] }), [], specs);
}

const waysIn = ({ gate, ways }: Gated): Way[] => [...(gate ? [gate.way] : []), ...ways.map(({ way }) => way)];

function withThese({ gates, vents }: Lists, { gated, spokes }: Pick<Found, 'gated' | 'spokes'>): Lists {
  const of = (sort: Channel['kind']) =>
    waysIn(gated).flatMap((way) => (way.sort === sort ? [way.listed] : []));
  return {
    gates: [...gates, ...(gated.gate ? [] : spokes), ...of('gate')],
    vents: [...vents, ...of('vent')],
  };
}

interface Settled {
  readonly lists: Lists;
  readonly found: readonly Found[];
  readonly channels: readonly Channel[];
}

/**
 * A way that was routed first goes round what came later, and may find none once all is drawn together: then all for its
 * cavities is sought anew among the others. What has no room even then is left out, and told with the air it leaves.
 */
function repaired(mold: Mold, anew: DrawAnew, all: Lists, first: readonly Found[]): Settled {
  let [lists, found] = [all, first];
  for (let round = 0; ; round++) {
    const channels = anew.draw(asPlanLists(lists));
    const isBad = (way: Way): boolean => !fits(anew, lists, channels, way);
    const bad = found.find(({ gated }) => waysIn(gated).some(isBad));
    if (!bad) return { lists, found, channels };
    const own = new Set([...bad.spokes, ...waysIn(bad.gated).map(({ listed }) => listed)]);
    const keep = (list: readonly Listed[]) => list.filter((one) => !own.has(one));
    const base: Lists = { gates: keep(lists.gates), vents: keep(lists.vents) };
    const others = channels.filter(({ placement }) => bad.kind.every(({ id }) => id !== placement));
    const gated =
      round < mostRepairs ? gatedIn(mold, anew, { base, others }, bad) : withoutBad(bad.gated, isBad);
    const mended = { ...bad, gated };
    found = found.map((one) => (one === bad ? mended : one));
    lists = withThese(base, mended);
  }
}

function withoutBad({ gate, ways, ...rest }: Gated, isBad: (way: Way) => boolean): Gated {
  const kept = ways.filter(({ way }) => !isBad(way));
  return { ...rest, ...(gate && !isBad(gate.way) && { gate }), ways: kept };
}

function fits(anew: DrawAnew, lists: Lists, channels: readonly Channel[], { sort, listed }: Way): boolean {
  const list = sort === 'gate' ? lists.gates : lists.vents;
  const upTo = list.slice(0, list.indexOf(listed) + 1);
  return listed.placements.every((id) => {
    const number = upTo.filter(({ placements }) => placements.includes(id)).length;
    const channel = channels.find((one) => one.id === channelId(sort, id, number));
    return channel !== undefined && anew.isFree(channel, channels);
  });
}

function told(mold: Mold, anew: DrawAnew, { lists, found, channels }: Settled): Proposed {
  const proposals = found.map(({ kind, room, specs, gated: { gate, ways } }): Proposal => {
    const [first] = kind;
    const own = channels.filter(({ placement }) => placement === first.id);
    const [before, after] = [channelsOf(mold, first.id), own].map((some) =>
      room.forecast(sweptIn(mold, first, some)),
    );
    const trial: Trial = { mold, kind, room, anew, drawn: channels, known: new Map() };
    return {
      placements: kind.map(({ id }) => id),
      ...(gate && { gate }),
      ways,
      left: airLeftOver(trial, specs, [], ways.length),
      ...(before && { before }),
      ...(after && { after }),
    };
  });
  return { lists, proposals };
}
