import { expect, test } from 'vitest';
import { resolveSupports } from '../../src/mold/resolve-supports.ts';
import { readPlan } from '../../src/plan/index.ts';

/** The build-ups of a plan of a ring of three leaves and one beetle, as `placement clearance`. */
function supportsOf(...lines: readonly string[]): string[] {
  const text = [
    'process: rubber',
    'disc: { diameter: 250, thickness: 19 }',
    'masters: { leaf: { file: leaf.stl }, beetle: { file: beetle.stl } }',
    'placements:',
    '  - { master: leaf, ring: { count: 3, radius: 60, start: 0 } }',
    '  - { master: beetle, at: { radius: 60, angle: 60 } }',
    ...lines,
  ].join('\n');
  const { plan, findings } = readPlan(text, 'plan.yaml');
  expect(findings).toEqual([]);
  return plan
    ? resolveSupports(plan).map((one) => [one.placement, one.clearance, one.material].join(' ').trim())
    : [];
}

test.each([
  ['nothing where the plan has none', [], []],
  [
    'auto: all, with the clearance of the fixtures',
    ['supports: auto', 'fixture: { clearance: 0.35 }'],
    ['leaf-1 0.35', 'leaf-2 0.35', 'leaf-3 0.35', 'beetle 0.35'],
  ],
  [
    'a clearance of their own, else that of the fixtures',
    [
      'supports: [{ placements: beetle, clearance: 0.5 }, { placements: leaf-2 }]',
      'fixture: { clearance: 0.35 }',
    ],
    ['leaf-2 0.35', 'beetle 0.5'],
  ],
  [
    'of another material than the fixtures',
    ['supports: [{ placements: [leaf-1, beetle], material: rubber }, { placements: beetle }]'],
    ['leaf-1 0.2 rubber', 'beetle 0.2'],
  ],
  [
    'the later of two entries',
    ['supports: [{ placements: leaf, clearance: 0.1 }, { placements: leaf-3, clearance: 0.4 }]'],
    ['leaf-1 0.1', 'leaf-2 0.1', 'leaf-3 0.4'],
  ],
] as const)('%s', (_, lines, expected) => {
  expect(supportsOf(...lines)).toEqual(expected);
});
