import type { Master, Mold } from './mold.ts';

/**
 * The master of a placement. Throws where the mold does not hold it: a plan that names one it lacks is refused when it is
 * read, so that only the program can have lost it.
 */
export function masterOf({ masters }: Pick<Mold, 'masters'>, id: string): Master {
  const master = masters.find((one) => one.id === id);
  if (!master) throw new Error(`a placement names the master ${id}, which the mold does not hold`);
  return master;
}
