import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  addMaster,
  type Edited,
  expandPlacements,
  readPlan,
  removeItem,
  repeatRound,
} from '../../../src/plan/index.ts';
import { saysOf } from '../../said.ts';

const plan = `process: rubber
disc: { diameter: 200, thickness: 20 }
masters:
  leaf: { width: 20, length: 30, above: 3, below: 2 }
  snail: { width: 20, length: 30, above: 3, below: 2 }
placements:
  # leaves
  - { master: leaf, ring: { count: 3, radius: 60, start: 30 } } # three
  # a snail
  - { master: snail, at: { radius: 2 in, angle: 0 } }
supports:
  - { placements: [leaf-1, leaf-3] }
gates:
  - { placements: [leaf, snail] } # both
  - { placements: snail }
`;

const textOf = (edited: Edited): string => {
  if ('fault' in edited) throw new Error(JSON.stringify(edited.fault));
  return edited.text;
};

const ids = (text: string): string[] => {
  const { plan: read, findings } = readPlan(text, 'p');
  if (!read) throw new Error(saysOf(findings[0]));
  return expandPlacements(read).map(({ id }) => id);
};

describe('taking away', () => {
  test('one of a ring: the rest stays, names that are numbered follow', () => {
    const text = textOf(removeItem(plan, { kind: 'placement', id: 'leaf-2' }));
    expect(ids(text)).toEqual(['leaf-1', 'leaf-2', 'snail']);
    expect(text).toContain('- { placements: [leaf-1, leaf-2] }');
    expect(text).toContain('{ radius: 60, angle: 30 },');
    expect(text).toContain('{ radius: 60, angle: -90 },');
    expect(text).toContain('# three');
  });

  test('one that is named is no longer named', () => {
    const text = textOf(removeItem(plan, { kind: 'placement', id: 'leaf-1' }));
    expect(text).toContain('- { placements: [leaf-2] }');
  });

  test('the only one of its entry, and what names nothing else', () => {
    const text = textOf(removeItem(plan, { kind: 'placement', id: 'snail' }));
    expect(ids(text)).toEqual(['leaf-1', 'leaf-2', 'leaf-3']);
    expect(text).toContain('- { placements: [leaf] } # both\n');
    expect(text.endsWith('# both\n')).toBe(true);
    expect(text).toContain('# a snail');
  });

  test('down to an empty list', () => {
    const two = textOf(removeItem(plan, { kind: 'placement', id: 'snail' }));
    const left = ['leaf-3', 'leaf-2', 'leaf-1'].reduce(
      (text, id) => textOf(removeItem(text, { kind: 'placement', id })),
      two,
    );
    expect(ids(left)).toEqual([]);
    expect(left).toContain('placements:\n  # leaves\n  [] # three\n');
  });

  test('boss and tab', () => {
    const demo = readFileSync('presets/hedgerow/plan.yaml', 'utf8');
    const text = textOf(removeItem(demo, { kind: 'boss', id: 'boss-2' }));
    const second = /^ {4}- \{\n +kind: cap nut,\n +size: M8,[\s\S]*?\n {6}\}\n/m;
    expect(text).toBe(demo.replace(second, ''));
    expect(text).not.toContain('near: 120');
    expect(textOf(removeItem(demo, { kind: 'tab', id: 'tab-1' }))).toContain('tabs:\n  []');
  });
});

describe('round the disc', () => {
  test('one becomes a ring', () => {
    const text = textOf(repeatRound(plan, { kind: 'placement', id: 'snail' }, 4));
    expect(text).toContain('- { master: snail, ring: { count: 4, radius: 2 in, start: 0 } }');
    expect(ids(text)).toContain('snail-4');
  });

  test('a ring gets another count', () => {
    const text = textOf(repeatRound(plan, { kind: 'placement', id: 'leaf-2' }, 5));
    expect(text).toBe(plan.replace('count: 3', 'count: 5'));
  });

  test('of a list one place is joined by others', () => {
    const list = textOf(removeItem(plan, { kind: 'placement', id: 'leaf-2' }));
    expect(ids(textOf(repeatRound(list, { kind: 'placement', id: 'leaf-1' }, 3)))).toHaveLength(5);
  });
});

describe('a master more', () => {
  test('from a file, with a name of its own', () => {
    const added = addMaster(plan, { file: 'Snail.stl', radius: 70, angleRad: Math.PI / 2 });
    expect(added.id).toBe('snail-2');
    const text = textOf(added);
    expect(text).toContain('  snail-2: { file: Snail.stl }\n');
    expect(text).toContain('  - { master: snail-2, at: { radius: 70, angle: 90 } }\n');
    expect(ids(text)).toHaveLength(5);
  });

  test('to a plan without any', () => {
    const bare = 'process: rubber\ndisc: { diameter: 200, thickness: 20 }\n';
    const text = textOf(addMaster(bare, { file: 'ein Käfer (2).stl', radius: 70, angleRad: 0 }));
    expect(text).toBe(
      `${bare}\nmasters:\n  ein-kafer-2: { file: "ein Käfer (2).stl" }\n\nplacements:\n  - { master: ein-kafer-2, at: { radius: 70, angle: 0 } }\n`,
    );
  });

  test('an outline, to empty sections', () => {
    const empty = 'process: rubber\ndisc: { diameter: 200, thickness: 20 }\nmasters: {}\nplacements: []\n';
    expect(ids(textOf(addMaster(empty, { file: 'leaf.svg', radius: 70, angleRad: 0 })))).toEqual(['leaf']);
  });
});
