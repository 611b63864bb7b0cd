import type { Finding } from '../findings/index.ts';
import type { Solid } from '../kernel/index.ts';

type Named = Pick<Solid, 'id' | 'subjects'>;

/** The subject of what is wrong with the mold as a whole, and of solids that are made from the mold as a whole. */
const wholeMold = 'mold';

/**
 * Whether a finding concerns a solid: its subject is the solid itself or something the solid was made from. A subject
 * that no solid knows (a boss that could not be made, a section of the plan) concerns all that is made from the mold
 * as a whole, since nothing shows that it does not.
 */
export function concerns(solids: readonly Named[]): (finding: Finding, solid: Named) => boolean {
  const known = new Set(solids.flatMap(({ id, subjects }) => [id, ...subjects]));
  return ({ subject }, { id, subjects }) => {
    if (subject === id || subjects.includes(subject)) return true;
    return !known.has(subject) && subjects.includes(wholeMold);
  };
}
