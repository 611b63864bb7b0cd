import type { ListChange, Plan } from '../../plan/index.ts';
import type { ProposedGate } from './gates.ts';
import { type Listed, listsOf } from './lists.ts';
import type { Proposed } from './propose.ts';
import type { ProposedWay } from './vents.ts';

/** What the proposals change in the plan's lists, each with why in words. */
export function changeOf(
  plan: Plan,
  { proposals, lists }: Proposed,
  why: { gate(one: ProposedGate): string; way(one: ProposedWay): string },
): Record<'gates' | 'vents', ListChange> {
  const of = (sort: 'gate' | 'vent') =>
    proposals.flatMap(({ gate, ways }) => [
      ...(gate && sort === 'gate' ? [{ channel: gate.way.listed, why: why.gate(gate) }] : []),
      ...ways.flatMap((one) =>
        one.way.sort === sort ? [{ channel: one.way.listed, why: why.way(one) }] : [],
      ),
    ]);
  const [gates, vents] = [of('gate'), of('vent')];
  const before = listsOf(plan);
  const keeps = (sort: 'gates' | 'vents', more: readonly { readonly channel: Listed }[]) => {
    const added = new Set(more.map(({ channel }) => channel));
    const rest = lists[sort].filter((one) => !added.has(one));
    // An entry is known again by its place in the text.
    return before[sort].map(({ at, placements }) =>
      placements.filter((id) => rest.some((one) => one.at === at && one.placements.includes(id))),
    );
  };
  return {
    gates: { keeps: keeps('gates', gates), more: gates },
    vents: { keeps: keeps('vents', vents), more: vents },
  };
}
