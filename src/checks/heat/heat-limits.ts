import type { CanRing, Mold } from '../../mold/index.ts';
import type { Heated } from './heat-cure.ts';

/** Load at which the plastics' limits were measured (ISO 75-2, method A). */
export const testedPa = 1.8e6;

export const ringThing = {
  'can-spacer': 'spacer',
  'centering-collar': 'collar',
  'thickness-stop': 'stop',
} as const satisfies Record<CanRing['id'], Heated['thing']>;

export const placedMasters = ({ masters, placements }: Mold): Mold['masters'] =>
  masters.filter(({ id }) => placements.some(({ master }) => master === id));
