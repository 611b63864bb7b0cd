import type { Finding } from '../findings/index.ts';
import type { Mold } from '../mold/index.ts';

/** Beyond a master's own circle its build-up or cavity may still reach, mm. */
const beside = 1;

/**
 * A fault of a solid's surface said of the master that was cut in where it is: a surface that meets itself gives solids
 * that do. A solid that is not closed stays the subject, so that it alone is withheld. Others stay as they are.
 */
export function ofMaster(found: Finding, { placements }: Pick<Mold, 'placements'>): Finding {
  const { code, place } = found;
  if (!place || !(code === 'solid.crossed' || code === 'solid.not-closed')) return found;
  const there = placements.find(({ x, y, reach }) => Math.hypot(place[0] - x, place[1] - y) < reach + beside);
  if (!there) return found;
  const subject = code === 'solid.crossed' ? there.master : found.subject;
  return { ...found, subject, values: { ...found.values, master: there.master } };
}
