import { describe, expect, test } from 'vitest';
import { resolveBosses } from '../../src/mold/resolve-bosses.ts';
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

describe('a ring by spacing', () => {
  // Floor of circumference over spacing, by hand: 2 pi 60 = 376.99; 2 pi 90 = 565.49.
  test.each([
    [200, '60 %', 40, 9],
    [300, '60 %', 40, 14],
    [200, '60 %', 377, 1],
    [200, '60 %', 376, 1],
    [200, '{ fromRim: 40 }', 125.663, 3],
  ])('on a disc of %d mm at %s, each %d mm, has %d places', (diameter, radius, spacing, count) => {
    const text = [
      'process: rubber',
      `disc: { diameter: ${diameter} }`,
      'masters: { leaf: { length: 20, width: 10, above: 2, below: 1 } }',
      `placements: [{ master: leaf, ring: { spacing: ${spacing}, radius: ${radius} } }]`,
      `registration: { bosses: [{ kind: dome, size: 8, ring: { spacing: ${spacing}, radius: ${radius}, start: 10 } }] }`,
    ].join('\n');
    const { plan, findings } = readPlan(text, 'p');
    if (!plan) throw new Error(JSON.stringify(findings));
    const places = expandPlacements(plan);
    expect(places).toHaveLength(count);
    expect(places.map(({ angleRad }) => Math.round((angleRad * 180) / Math.PI))).toEqual(
      Array.from({ length: count }, (_, i) => Math.round((360 * i) / count)),
    );
    const { bosses } = resolveBosses(plan);
    expect(bosses.map(({ id }) => id)).toEqual(Array.from({ length: count }, (_, i) => `boss-${i + 1}`));
    expect(Math.atan2(bosses[0].y, bosses[0].x)).toBeCloseTo(Math.PI / 18, 9);
  });

  test.each([
    ['placements: [{ master: leaf, ring: { radius: 50 } }]', 'plan.missing'],
    ['placements: [{ master: leaf, ring: { radius: 50, count: 3, spacing: 20 } }]', 'plan.choose-one'],
    ['registration: { bosses: [{ kind: dome, size: 8 }] }', 'plan.missing'],
    [
      'registration: { bosses: [{ kind: dome, size: 8, at: { radius: 50, angle: 0 }, ring: { count: 2, radius: 50 } }] }',
      'plan.choose-one',
    ],
  ])('%s is refused', (line, code) => {
    const text = `process: rubber\ndisc: { diameter: 200 }\nmasters: { leaf: { length: 20, width: 10, above: 2, below: 1 } }\n${line}`;
    expect(readPlan(text, 'p').findings.map((one) => one.code)).toEqual([code]);
  });
});
