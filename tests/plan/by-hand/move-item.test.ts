import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { expandPlacements, moveItem, readPlan, resolveRadius } from '../../../src/plan/index.ts';
import { saysOf } from '../../said.ts';

const rad = Math.PI / 180;

const plan = `# kept
process: rubber
disc: { diameter: 200, thickness: 20 } # kept too
masters:
  leaf: { width: 20, length: 30, above: 3, below: 2 }
placements:
  # the first
  - { id: one, master: leaf, at: { radius: { fromRim: 1 1/2 in }, angle: 10 }, sink: 50 % } # behind
  - master: leaf
    ring:
      count: 3 # three of them
      radius: 60 %
      start: 30
    turn: 5
    # after
  - { master: leaf, each: [{ radius: 40, angle: 0 }, { radius: 40, angle: 180 }] }
registration:
  bosses:
    - { id: nut, kind: dome, size: 8, ring: { count: 2, radius: 90, start: 0 } } # domes
    - { kind: dome, size: 6, at: { radius: 3.5 in, angle: 270 } }
tabs:
  - { width: 18 }
`;

/** Lines that differ, as - and +. */
function changes(before: string, after: string): string[] {
  const [a, b] = [before.split('\n'), after.split('\n')];
  return [
    ...a.filter((line) => !b.includes(line)).map((l) => `-${l}`),
    ...b.filter((line) => !a.includes(line)).map((l) => `+${l}`),
  ];
}

const moved = (...args: Parameters<typeof moveItem>): string => {
  const edited = moveItem(...args);
  if ('fault' in edited) throw new Error(JSON.stringify(edited.fault));
  return edited.text;
};

const placements = (text: string) => {
  const { plan: read, findings } = readPlan(text, 'p');
  if (!read) throw new Error(saysOf(findings[0]));
  return expandPlacements(read).map(({ id, radius, angleRad, turnRad }) => ({
    id,
    radius: resolveRadius(radius, read.disc.diameter / 2),
    angle: angleRad / rad,
    turn: turnRad / rad,
  }));
};

describe('an item alone', () => {
  test('keeps the form and unit of its radius', () => {
    const text = moved(plan, { kind: 'placement', id: 'one' }, { radius: 100 - 25.4, angleRad: 370 * rad });
    expect(changes(plan, text)).toEqual([
      '-  - { id: one, master: leaf, at: { radius: { fromRim: 1 1/2 in }, angle: 10 }, sink: 50 % } # behind',
      '+  - { id: one, master: leaf, at: { radius: { fromRim: 1 in }, angle: 10 }, sink: 50 % } # behind',
    ]);
  });

  test('turn and sink of a single placement', () => {
    const text = moved(
      plan,
      { kind: 'placement', id: 'one' },
      { turnRad: -90 * rad, sink: { depth: 1, height: 5 } },
    );
    expect(text).toContain('angle: 10 }, sink: 20 %, turn: -90 } # behind');
  });

  test('one of a list', () => {
    const text = moved(plan, { kind: 'placement', id: 'leaf-5' }, { radius: 41.5, turnRad: 10 * rad });
    expect(changes(plan, text)).toEqual([
      '-  - { master: leaf, each: [{ radius: 40, angle: 0 }, { radius: 40, angle: 180 }] }',
      '+  - { master: leaf, each: [{ radius: 40, angle: 0 }, { radius: 41.5, angle: 180, turn: 10 }] }',
    ]);
  });

  test('a boss, in inches', () => {
    expect(moved(plan, { kind: 'boss', id: 'boss-3' }, { radius: 76.2 })).toContain(
      'at: { radius: 3 in, angle: 270 }',
    );
  });

  test('a tab that had no angle gets one', () => {
    expect(moved(plan, { kind: 'tab', id: 'tab-1' }, { angleRad: 1.5 * Math.PI })).toContain(
      '- { width: 18, angle: -90 }',
    );
  });
});

describe('out of a ring', () => {
  test('the ring becomes a list, names and the others stay', () => {
    const before = placements(plan);
    const text = moved(plan, { kind: 'placement', id: 'leaf-2' }, { radius: 50, angleRad: 160 * rad });
    expect(text).toContain('# three of them');
    expect(text).toContain('    # after');
    const after = placements(text);
    expect(after.map(({ id }) => id)).toEqual(before.map(({ id }) => id));
    for (const [i, one] of after.entries()) {
      const want = one.id === 'leaf-2' ? { ...before[i], radius: 50, angle: 160 } : before[i];
      expect(one.radius).toBeCloseTo(want.radius, 6);
      expect((one.angle - want.angle) % 360).toBeCloseTo(0, 4);
      expect(one.turn).toBeCloseTo(want.turn, 6);
    }
  });

  test('the whole ring goes along where that is wanted', () => {
    const text = moved(
      plan,
      { kind: 'placement', id: 'leaf-2' },
      { radius: 50, angleRad: 160 * rad },
      'together',
    );
    expect(changes(plan, text)).toEqual([
      '-      radius: 60 %',
      '-      start: 30',
      '+      radius: 50 %',
      '+      start: 40',
    ]);
  });

  test('a boss becomes one of its own, and so do the others', () => {
    const text = moved(plan, { kind: 'boss', id: 'nut-2' }, { radius: 80 });
    expect(changes(plan, text)).toEqual([
      '-    - { id: nut, kind: dome, size: 8, ring: { count: 2, radius: 90, start: 0 } } # domes',
      '+    - { id: nut-1, kind: dome, size: 8, at: { radius: 90, angle: 0 } } # domes',
      '+    - { id: nut-2, kind: dome, size: 8, at: { radius: 80, angle: 180 } }',
    ]);
  });

  const block = `process: rubber
disc: { diameter: 200, thickness: 20 }
registration:
  bosses:
    # the even ones
    - id: nut # named
      kind: cap nut
      size: 3/8 # from the drawer
      ring: # round and round
        count: 3 # of them
        radius: { fromRim: 1/2 in }
        start: 30
      turn: 15 # flats
      # under the ring
    # before the odd one
    - kind: dome
      size: 6
      at: { radius: 80, angle: 5 }
`;

  test('a boss of a ring written over several lines: the comments stay, each with what it is about', () => {
    const text = moved(block, { kind: 'boss', id: 'nut-2' }, { radius: 60, turnRad: 20 * rad });
    expect(text).toBe(`process: rubber
disc: { diameter: 200, thickness: 20 }
registration:
  bosses:
    # the even ones
    - id: nut-1 # named
      kind: cap nut
      size: 3/8 # from the drawer
      # round and round
      # of them
      at: { radius: { fromRim: 1/2 in }, angle: 30 }
      turn: 15 # flats
      # under the ring
    - { id: nut-2, kind: cap nut, size: 3/8, at: { radius: { fromRim: 1.5748 in }, angle: 150 }, turn: 20 }
    - { id: nut-3, kind: cap nut, size: 3/8, at: { radius: { fromRim: 1/2 in }, angle: -90 }, turn: 15 }
    # before the odd one
    - kind: dome
      size: 6
      at: { radius: 80, angle: 5 }
`);
  });

  test('the first of such a ring, and one of a list in brackets', () => {
    const text = moved(
      block.replaceAll(/^.*turn: 15.*\n/gm, ''),
      { kind: 'boss', id: 'nut-1' },
      { turnRad: rad },
    );
    expect(text).toContain('      at: { radius: { fromRim: 1/2 in }, angle: 30 }\n      turn: 1\n');
    const bosses = '[{ kind: cone, size: 9, ring: { count: 2, radius: 90 } }]';
    const listed = `process: rubber\ndisc: { diameter: 200, thickness: 20 }\nregistration: { bosses: ${bosses} }\n`;
    expect(moved(listed, { kind: 'boss', id: 'boss-2' }, { radius: 80 })).toContain(
      '[{ kind: cone, size: 9, at: { radius: 90, angle: 0 } }, { kind: cone, size: 9, at: { radius: 80, angle: 180 } }]',
    );
  });
});

test('every placement, boss and tab of the demo can be moved, and only its entry changes', () => {
  const demo = readFileSync('presets/hedgerow/plan.yaml', 'utf8');
  for (const { id, angle } of placements(demo)) {
    const text = moved(demo, { kind: 'placement', id }, { radius: 70, angleRad: angle * rad });
    expect(placements(text).map((one) => one.id)).toEqual(placements(demo).map((one) => one.id));
    expect(changes(demo, text).filter((line) => line.startsWith('-'))).toHaveLength(1);
  }
});

test('what cannot be', () => {
  expect(moveItem(plan, { kind: 'boss', id: 'none' }, {})).toEqual({ fault: 'The plan has no boss none.' });
  expect(moveItem('process: [', { kind: 'boss', id: 'none' }, {})).toMatchObject({
    fault: expect.stringContaining('cannot be read'),
  });
  expect(moveItem(plan, { kind: 'placement', id: 'leaf-4' }, { radius: -3 })).toMatchObject({
    fault: { code: 'plan.out-of-range' },
  });
});
