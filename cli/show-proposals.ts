import type { Proposal } from '../src/fill/index.ts';
import type { UnitSystem } from '../src/findings/index.ts';
import { showQuantity } from '../src/wording/index.ts';
import { strong, wrap } from './terminal.ts';

type Gate = NonNullable<Proposal['gate']>;
type Vent = Proposal['vents'][number];

const whereAir = {
  room: 'in the open cavity',
  leg: 'in a narrow leg',
  mouth: 'under the mouth of a leg',
} as const;

/** Of one line: it stands as a comment in the plan too. */
export const whyVent = ({ side, frees }: Vent, units: UnitSystem): string =>
  `${side} side: ${showQuantity(frees.volume, 'mm3', units)} of air stay ${whereAir[frees.where]} without it`;

export function whyGate({ side, opened, listed }: Gate, units: UnitSystem): string {
  const base = `${side} side`;
  if (!opened) return `${base}: least air for the fewest vents`;
  const wanted = showQuantity(opened.wanted, 'mm', units);
  return listed.width === opened.wanted
    ? `${base}: opened to ${wanted}, where air gets out past the metal`
    : `${base}: air would get out past the metal at ${wanted}, for which there is no room`;
}

/** What is proposed for each kind of cavity, and why. */
export const showProposals = (proposals: readonly Proposal[], units: UnitSystem, width: number): string =>
  proposals.map((one) => showProposal(one, units, width)).join('\n\n');

function showProposal(proposal: Proposal, units: UnitSystem, width: number): string {
  const { placements, gate, vents, before, after } = proposal;
  const air = (forecast: Proposal['before']): string =>
    forecast
      ? showQuantity(
          forecast.places.reduce((sum, { volumes }) => sum + volumes[0], 0),
          'mm3',
          units,
        )
      : 'not known, no gate opens into it';
  const left = after?.places.filter(({ volumes }) => volumes[0] > 0) ?? [];
  const lines = [
    gate ? `gate at the ${whyGate(gate, units)}` : 'gate: as the plan has it',
    ...vents.map((vent) => `vent at the ${whyVent(vent, units)}`),
    ...(vents.length === 0 ? ['no vent more'] : []),
    `air that stays: ${air(before)} before, ${air(after)} after`,
    ...left.map(
      ({ volumes, pocket }) =>
        `${showQuantity(volumes[0], 'mm3', units)} stay ${whereAir[pocket.where]}, ${showQuantity(Math.hypot(pocket.place[0], pocket.place[1]), 'mm', units)} from the axis: no vent along the parting surface that was tried lets them out`,
    ),
  ];
  return [strong(placements.join(', ')), ...lines.map((line) => wrap(line, width, '  ', '    '))].join('\n');
}
