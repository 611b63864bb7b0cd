import { describe, expect, it } from 'vitest';
import { checks } from '../../src/checks/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { readMold } from '../../src/pipeline/index.ts';
import { soundText } from '../faults/fault-plans.ts';

const kernel = await loadKernel();

async function moldOf(name: 'rubber' | 'rigid' | 'poured'): Promise<Mold> {
  const bytes = new TextEncoder().encode(soundText(name));
  const files = () => Promise.reject(new Error('no files'));
  const { mold } = await readMold({ bytes, name, files }, kernel);
  if (!mold) throw new Error(`${name} is not read`);
  return mold;
}

const molds = await Promise.all((['rubber', 'rigid', 'poured'] as const).map(moldOf));

/** What stands on the disc and can be dragged or pointed at. */
const standingOn = ({ placements, bosses, tabs, notches, channels, bench }: Mold): Set<string> =>
  new Set([
    ...[placements, bosses, tabs, notches, channels].flatMap((things) => things.map(({ id }) => id)),
    'sprue',
    'bolts',
    ...Array.from({ length: bench.closing?.bolts?.count ?? 0 }, (_, k) => `bolt-${k + 1}`),
  ]);

/** What else is spoken of: the mold, its halves, and what stands at the bench. */
const wholes = new Set(
  'mold, lower half, upper half, can, closing, cure, alloy, spin, machine, pouring, order'.split(', '),
);

/** What each unit of each check is about: its subject first, then what it says it is about. */
const unitsOf = (mold: Mold) =>
  checks.flatMap(({ id, units }) => units(mold).map(({ subject, about }) => ({ id, subject, about })));

describe.each(molds)('the units of all checks, halves $process', (mold) => {
  const things = standingOn(mold);

  it('are about things of the disc, their subject among them; those of a whole about none', () => {
    const units = unitsOf(mold);
    const isSound = ({ subject, about }: (typeof units)[number]): boolean =>
      things.has(subject)
        ? about.includes(subject) && about.every((one) => things.has(one))
        : wholes.has(subject) && about.length === 0;
    expect(units.filter((unit) => !isSound(unit))).toEqual([]);
    expect(units.filter(({ subject }) => things.has(subject)).length).toBeGreaterThan(10);
    expect(units.filter(({ subject }) => wholes.has(subject)).length).toBeGreaterThan(3);
  });

  it('ask nothing twice: no two of a check are about the same', () => {
    const asked = unitsOf(mold).map(({ id, subject, about }) => [id, subject, ...about].join(' '));
    expect(asked.filter((one, i) => asked.indexOf(one) < i)).toEqual([]);
  });
});
