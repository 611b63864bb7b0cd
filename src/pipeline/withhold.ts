import type { Finding } from '../findings/index.ts';
import type { Placement, Solid } from '../mold/index.ts';

type Named = Pick<Solid, 'id' | 'subjects'>;

/** The subject of what is wrong with the mold as a whole, and of solids that are made from the mold as a whole. */
export const wholeMold = 'mold';

/**
 * Whether a finding concerns a solid: its subject is the solid itself or something the solid was made from; what is
 * made from a placement is made from its master too. A subject that no solid knows (a boss that could not be made, a
 * section of the plan) concerns all that is made from the mold as a whole, since nothing shows that it does not.
 */
export function concerns(
  solids: readonly Named[],
  { placements }: { readonly placements: readonly Pick<Placement, 'id' | 'master'>[] },
): (finding: Finding, solid: Named) => boolean {
  const masters = new Map(placements.map(({ id, master }) => [id, master]));
  const madeFrom = ({ id, subjects }: Named): Set<string> =>
    new Set([id, ...subjects, ...subjects.flatMap((subject) => masters.get(subject) ?? [])]);
  const known = new Set(solids.flatMap((solid) => [...madeFrom(solid)]));
  return ({ subject }, solid) =>
    madeFrom(solid).has(subject) || (!known.has(subject) && solid.subjects.includes(wholeMold));
}
