import type { CodeValues } from '../../findings/index.ts';
import type { CanRing, Mold } from '../../mold/index.ts';
import type { HeatRow } from '../../tables/index.ts';

/** What is heated, and of what it is. */
export interface Heated {
  readonly subject: string;
  readonly thing: CodeValues<'heat.unknown'>['thing'];
  /** Left out where the plan leaves it out. */
  readonly material?: string;
  /** What is known of that. */
  readonly row?: HeatRow;
  /** Of length, where the plan's own sheet gives it. */
  readonly expansionPerK?: number;
}

export const ringThing = {
  'can-spacer': 'spacer',
  'centering-collar': 'collar',
  'thickness-stop': 'stop',
} as const satisfies Record<CanRing['id'], Heated['thing']>;

export const placedMasters = ({ masters, placements }: Mold): Mold['masters'] =>
  masters.filter(({ id }) => placements.some(({ master }) => master === id));
