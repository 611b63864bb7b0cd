import type { UnitSystem } from '../../findings/index.ts';
import { showQuantity } from '../../wording/index.ts';
import type { ProposedGate } from './gates.ts';
import type { ProposedWay } from './vents.ts';

// Why a gate or vent is proposed, as both shells say it and as it stands in the plan.

/** Where a pocket stands. */
export const whereAir = {
  room: 'in the open cavity',
  leg: 'in a narrow leg',
  mouth: 'under the mouth of a leg',
} as const;

/** Of one line: it stands as a comment in the plan too. */
export const whyWay = ({ side, frees }: ProposedWay, units: UnitSystem): string =>
  `${side} side fills last: ${showQuantity(frees.volume, 'mm3', units)} of air stay ${whereAir[frees.where]} without it`;

export function whyGate({ side, opened, reaches, way: { listed } }: ProposedGate, units: UnitSystem): string {
  const base = `${side} side`;
  if (reaches !== undefined)
    return `${base}: wider, so that ${showQuantity(reaches, 'mm3', units)} of air beside it get out`;
  if (!opened) return `${base}: least air for the fewest vents`;
  const wanted = showQuantity(opened.wanted, 'mm', units);
  return listed.width === opened.wanted
    ? `${base}: opened to ${wanted}, where air gets out past the metal`
    : `${base}: air would get out past the metal at ${wanted}, for which there is no room`;
}
