import type { Point2 } from '../../geometry/index.ts';
import { heightAt } from '../../mold/index.ts';
import type { Pocket } from '../conditions.ts';
import { inMold, type Trial } from './trial.ts';

/** How far a place may be from the outline and from the parting surface for a channel to open into it, mm: about a cell of the forecast. */
const [nearOutline, nearSurface] = [1, 0.6];
/** Openings tried for one pocket, and how far they are from each other at least, mm. */
const [mostOpenings, openingsApart] = [6, 1.2];

/**
 * Where on the outline a channel for a pocket may begin, best first: at the last sealed of its places that lie at the parting
 * surface and the outline, then at earlier ones some way off, for the first may be a corner without room. Else how far the
 * nearest of its places is from where a knife comes, mm.
 */
export function openingsFor(
  { mold, kind, room, anew }: Pick<Trial, 'mold' | 'kind' | 'room' | 'anew'>,
  { cells }: Pocket,
): { readonly at: readonly Point2[] } | { readonly away: number } {
  const { id } = kind[0];
  const found: Point2[] = [];
  let away = Number.POSITIVE_INFINITY;
  for (let k = cells.length - 1; k >= 0 && found.length < mostOpenings; k--) {
    const [x, y, z] = inMold(kind, room.middle(cells[k]));
    if (found.some(([u, v]) => Math.hypot(x - u, y - v) < openingsApart)) continue;
    const over = Math.abs(z - heightAt(mold.parting, x, y));
    if (over > nearSurface && found.length > 0) continue;
    const there = anew.onOutline(id, [x, y]);
    if (!there) continue;
    if (over <= nearSurface && there.away <= nearOutline) found.push(there.at);
    else away = Math.min(away, Math.hypot(over, there.away));
  }
  return found.length > 0 ? { at: found } : { away };
}
