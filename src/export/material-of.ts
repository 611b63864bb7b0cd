import { kindOfRole } from '../kinds/index.ts';
import type { Mold, Solid } from '../mold/index.ts';

/**
 * Fixtures are of the plan's fixture material, build-ups and masters of what the plan says of them; halves that are
 * pressed or poured are of what is pressed or poured.
 */
export function materialOf(
  { role, subjects }: Pick<Solid, 'role' | 'subjects'>,
  { process, fixture, supports, masters }: Mold,
): string {
  const { madeOf } = kindOfRole(role);
  if (process !== 'rigid' && madeOf === 'half')
    return process === 'rubber' ? 'rubber' : 'poured on the pattern plates';
  if (madeOf === 'its support')
    return supports.find(({ placement }) => subjects.includes(placement))?.material ?? fixture.material;
  if (madeOf === 'its master')
    return masters.find(({ id }) => subjects.includes(id))?.material ?? fixture.material;
  return fixture.material;
}
