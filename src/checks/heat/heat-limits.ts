import type { CodeValues } from '../../findings/index.ts';
import type { CanRing, Mold } from '../../mold/index.ts';

/** Load at which the plastics' limits were measured (ISO 75-2, method A). */
export const testedPa = 1.8e6;

/** What is heated, and of what it is. */
export interface Heated {
  readonly subject: string;
  readonly thing: CodeValues<'heat.unknown'>['thing'];
  readonly material: string;
}

export const ringThing = {
  'can-spacer': 'spacer',
  'centering-collar': 'collar',
  'thickness-stop': 'stop',
} as const satisfies Record<CanRing['id'], Heated['thing']>;

export const placedMasters = ({ masters, placements }: Mold): Mold['masters'] =>
  masters.filter(({ id }) => placements.some(({ master }) => master === id));
