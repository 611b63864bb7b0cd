import { expect, test } from 'vitest';
import { expandPlacements, placementsNamed, readPlan, resolveRadius } from '../../src/plan/index.ts';

const expanded = (placements: string) => {
  const { plan, findings } = readPlan(
    `process: rubber
disc: { diameter: 250 }
masters: { snail: { file: a.stl }, ivy: { file: b.stl } }
placements:
${placements}`,
    'plan.yaml',
  );
  expect(findings).toEqual([]);
  return plan ? expandPlacements(plan) : [];
};

test('a single placement keeps the name of its master, a ring is numbered', () => {
  const flat = expanded(`
  - { master: ivy, at: { radius: 50, angle: 0 } }
  - { master: snail, ring: { count: 4, radius: 80, start: 10 }, turn: 5 }`);
  expect(flat.map(({ id }) => id)).toEqual(['ivy', 'snail-1', 'snail-2', 'snail-3', 'snail-4']);
  const angles = flat.slice(1).map(({ angleRad }) => (angleRad * 180) / Math.PI);
  for (const [i, angle] of angles.entries()) expect(angle).toBeCloseTo(10 + 90 * i, 10);
  expect(flat[1]).toMatchObject({
    master: 'snail',
    group: 'snail',
    radius: { length: 80 },
  });
  expect(flat[1].turnRad).toBeCloseTo((5 * Math.PI) / 180, 12);
  // How deep is the mold's to decide where the plan does not say it.
  expect(flat[1].sink).toBeUndefined();
  expect(flat[1].at).toEqual({ file: 'plan.yaml', line: 7, column: 5 });
});

test('several entries of one master are numbered through', () => {
  const flat = expanded(`
  - { master: snail, ring: { count: 2, radius: 80 } }
  - { master: snail, at: { radius: 30, angle: 0 } }
  - { id: inner, master: snail, ring: { count: 2, radius: 40 } }
  - { id: last, master: snail, at: { radius: 20, angle: 0 } }`);
  expect(flat.map(({ id }) => id)).toEqual(['snail-1', 'snail-2', 'snail-3', 'inner-1', 'inner-2', 'last']);
});

test('a place of a list may turn differently from its entry', () => {
  const flat = expanded(`
  - { master: ivy, turn: 10, each: [{ radius: 50, angle: 0 }, { radius: 50, angle: 90, turn: 20 }] }`);
  expect(flat.map(({ turnRad }) => Math.round((turnRad * 180) / Math.PI))).toEqual([10, 20]);
});

test('a name stands for one placement, for a whole entry, or for all', () => {
  const flat = expanded(`
  - { master: ivy, at: { radius: 50, angle: 0 } }
  - { master: snail, ring: { count: 2, radius: 80 } }`);
  expect(placementsNamed(flat, 'snail')).toEqual(['snail-1', 'snail-2']);
  expect(placementsNamed(flat, 'snail-2')).toEqual(['snail-2']);
  expect(placementsNamed(flat, 'ivy')).toEqual(['ivy']);
  expect(placementsNamed(flat, 'all')).toEqual(['ivy', 'snail-1', 'snail-2']);
  expect(placementsNamed(flat, 'beetle')).toEqual([]);
});

test('a radius follows the disc where it is a share or counted from the rim', () => {
  expect(resolveRadius({ length: 40 }, 125)).toBe(40);
  expect(resolveRadius({ share: 0.6 }, 125)).toBe(75);
  expect(resolveRadius({ fromRim: 30 }, 125)).toBe(95);
});
