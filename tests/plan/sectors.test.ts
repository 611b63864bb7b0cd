import { describe, expect, test } from 'vitest';
import { resolveLayout } from '../../src/mold/index.ts';
import {
  expandPlacements,
  moveItem,
  type Plan,
  readPlan,
  repeatRound,
  sectorCount,
} from '../../src/plan/index.ts';

const text = (diameter: string): string => `process: rubber
disc: { diameter: ${diameter} }
sectors: { spacing: 190, radius: { fromRim: 28 } }
masters: { leaf: { length: 20, width: 10, above: 2, below: 1 }, bud: { length: 8, width: 8, above: 2, below: 1 } }
placements:
  - { master: leaf, ring: { perSector: 1, radius: { fromRim: 28 }, start: 3, offset: 12.5 % } }
  - { master: bud, leastDisc: 8 in, ring: { perSector: 2, radius: { fromRim: 59 }, offset: 50 % } }
gates: [{ placements: bud }]
registration:
  bosses:
    - { kind: cap nut, size: M8, leastDisc: 8 in, at: { radius: { fromRim: 14 }, angle: { near: 120, perSector: 4 } } }
    - { kind: cap nut, size: M10, at: { radius: { fromRim: 16 }, angle: 180 } }
tabs: [{ angle: { near: 60, perSector: 4 } }]
`;

function planOf(diameter: string): Plan {
  const { plan, findings } = readPlan(text(diameter), 'rules.yaml');
  if (!plan) throw new Error(JSON.stringify(findings));
  expect(findings).toEqual([]);
  return plan;
}

const degrees = (rad: number): number => Number(((rad * 180) / Math.PI).toFixed(9));
const lengths = (plan: Plan, name: string): number =>
  expandPlacements(plan).filter(({ master }) => master === name).length;

describe('what follows by sectors', () => {
  // By hand: 2 pi (d / 2 - 28) / 190 down to a whole number: 1.59, 2.85, 3.21, 4.11, 5.37. A sector has four
  // directions, 90 / n degrees apart; 120 goes to the nearest of them, as does 60.
  test.each([
    ['6 in', 1, 0, [], 90],
    ['9 in', 2, 4, [135], 45],
    ['250', 3, 6, [120], 60],
    ['12 in', 4, 8, [112.5], 67.5],
    ['15 in', 5, 10, [126], 54],
  ])('a disc of %s has %d sectors', (diameter, count, buds, boss, tab) => {
    const plan = planOf(diameter);
    expect(sectorCount(plan)).toBe(count);
    expect([lengths(plan, 'leaf'), lengths(plan, 'bud')]).toEqual([count, buds]);
    const [leaf] = expandPlacements(plan);
    expect(degrees(leaf.angleRad)).toBeCloseTo(3 + 0.125 * (360 / count), 9);
    const { mold } = resolveLayout({ ...plan, placements: [], gates: [] }, []);
    const angles = mold.bosses.map(({ x, y }) => (degrees(Math.atan2(y, x)) + 360) % 360);
    for (const [i, angle] of [...boss, 180].entries()) expect(angles[i]).toBeCloseTo(angle, 6);
    expect(angles).toHaveLength(boss.length + 1);
    expect(degrees(mold.tabs[0].angleRad)).toBeCloseTo(tab, 6);
  });

  test.each<[string, string, string, string]>([
    ['no sectors', 'sectors: { spacing: 190, radius: { fromRim: 28 } }\n', '', 'plan.missing'],
    ['both', 'spacing: 190, radius', 'count: 3, spacing: 190, radius', 'plan.choose-one'],
    ['a circle beside a number', 'spacing: 190, radius', 'count: 3, radius', 'plan.choose-one'],
    ['no circle', ', radius: { fromRim: 28 } }\nmasters', ' }\nmasters', 'plan.missing'],
    ['two numbers', 'perSector: 1, radius', 'perSector: 1, count: 3, radius', 'plan.choose-one'],
    ['no number', 'perSector: 1, radius', 'radius', 'plan.missing'],
    ['no steps', 'near: 60, perSector: 4', 'near: 60', 'plan.missing'],
    ['half a step', 'near: 60, perSector: 4', 'near: 60, perSector: 0.5', 'plan.wrong-kind'],
    ['too far on', '12.5 %', '120 %', 'plan.out-of-range'],
  ])('%s is a stop', (_what, from, to, code) => {
    const changed = text('250').replace(from, to);
    expect(changed).not.toBe(text('250'));
    expect([...new Set(readPlan(changed, 'rules.yaml').findings.map((one) => one.code))]).toEqual([code]);
  });

  test('an entry that is left out keeps its name, and a name that is nowhere stays a fault', () => {
    expect(planOf('6 in').placements).toHaveLength(2);
    const { findings } = readPlan(text('6 in').replace('placements: bud', 'placements: twig'), 'rules.yaml');
    expect(findings.map(({ code }) => code)).toEqual(['plan.unknown-id']);
  });
});

describe('moved by hand', () => {
  const changed = (edited: ReturnType<typeof moveItem>): string => {
    if ('fault' in edited) throw new Error(JSON.stringify(edited.fault));
    return edited.text;
  };
  const angleOf = (edited: string, which: number): number => {
    const { plan } = readPlan(edited, 'rules.yaml');
    if (!plan) throw new Error(edited);
    return degrees(expandPlacements(plan)[which].angleRad);
  };

  test('a ring with an offset goes where it is taken', () => {
    const ten = (28 * Math.PI) / 180;
    const edited = changed(
      moveItem(text('250'), { kind: 'placement', id: 'leaf-1' }, { angleRad: ten }, 'together'),
    );
    expect(angleOf(edited, 0)).toBeCloseTo(28, 6);
    expect(edited).toContain('start: 13, offset: 12.5 %');
  });

  test('an angle by rule gives way to the one set', () => {
    const boss = changed(moveItem(text('250'), { kind: 'boss', id: 'boss-1' }, { angleRad: Math.PI / 2 }));
    expect(boss).toContain('at: { radius: { fromRim: 14 }, angle: 90 } }');
    expect(changed(moveItem(text('250'), { kind: 'tab', id: 'tab-1' }, { angleRad: 0 }))).toContain(
      'tabs: [{ angle: 0 }]',
    );
  });

  test('a ring by sectors gets a number of its own', () => {
    expect(changed(repeatRound(text('250'), { kind: 'placement', id: 'leaf-1' }, 7))).toContain(
      'ring: { count: 7, radius',
    );
  });
});
