import type { Master, Mold, Placement } from './mold.ts';

/**
 * The master of a placement. Throws where the mold does not hold it: a plan that names one it lacks is refused when it is
 * read, so that only the program can have lost it.
 */
export function masterOf(
  { masters }: Pick<Mold, 'masters'>,
  { id, master }: Pick<Placement, 'id' | 'master'>,
): Master {
  const found = masters.find((one) => one.id === master);
  if (!found) throw new Error(`placement ${id} is of the master ${master}, which the mold does not hold`);
  return found;
}
