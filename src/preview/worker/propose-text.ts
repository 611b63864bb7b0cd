import { changeOf, proposeChannels, whyGate, whyWay } from '../../fill/index.ts';
import type { Mold } from '../../mold/index.ts';
import { writeChannels } from '../../plan/index.ts';
import type { BuildRequest, ProposedText } from './messages.ts';

/** Proposes gates and vents and writes them into the plan's text. */
export function proposeText(
  { plan, planBytes }: Pick<BuildRequest, 'plan' | 'planBytes'>,
  mold: Mold,
  options: Parameters<typeof proposeChannels>[2],
): ProposedText {
  const proposed = proposeChannels(plan, mold, options);
  const none = { gates: 0, vents: 0, before: 0, after: 0 };
  if ('missing' in proposed) {
    const missing = proposed.missing.join(' and ') || 'a sprue';
    return { ...none, fault: `How it fills is not known without ${missing}.` };
  }
  const { proposals } = proposed;
  const ways = proposals.flatMap((one) => one.ways);
  const found = {
    gates: proposals.filter(({ gate }) => gate).length + ways.filter(({ way }) => way.sort === 'gate').length,
    vents: ways.filter(({ way }) => way.sort === 'vent').length,
    before: airIn(proposals, 'before'),
    after: airIn(proposals, 'after'),
  };
  if (found.gates + found.vents === 0) return found;
  const change = changeOf(plan, proposed, {
    gate: (one) => whyGate(one, mold.units),
    way: (one) => whyWay(one, mold.units),
  });
  return { ...found, ...writeChannels(new TextDecoder().decode(planBytes), change) };
}

type Proposals = Exclude<
  ReturnType<typeof proposeChannels>,
  { readonly missing: readonly string[] }
>['proposals'];

/** Of all placements: like ones have as much. */
const airIn = (proposals: Proposals, when: 'before' | 'after'): number =>
  proposals.reduce((sum, { placements, [when]: forecast }) => {
    const air = forecast?.places.reduce((all, { volumes }) => all + volumes[0], 0) ?? 0;
    return sum + placements.length * air;
  }, 0);
