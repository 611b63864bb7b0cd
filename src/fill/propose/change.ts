import type { ListChange, Plan } from '../../plan/index.ts';
import type { ProposedGate } from './gates.ts';
import { type Listed, listsOf } from './lists.ts';
import type { Proposed } from './propose.ts';
import type { ProposedVent } from './vents.ts';

/** What the proposals change in the plan's lists, each with why in words. */
export function changeOf(
  plan: Plan,
  { proposals, lists }: Proposed,
  why: { gate(one: ProposedGate): string; vent(one: ProposedVent): string },
): Record<'gates' | 'vents', ListChange> {
  const gates = proposals.flatMap(({ gate }) =>
    gate ? [{ channel: gate.listed, why: why.gate(gate) }] : [],
  );
  const vents = proposals.flatMap((one) =>
    one.vents.map((vent) => ({ channel: vent.listed, why: why.vent(vent) })),
  );
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
