import { expect, test } from 'vitest';
import { flatPartingSurface } from '../../src/mold/index.ts';
import { resolveParting } from '../../src/mold/resolve-parting.ts';
import { readPlan } from '../../src/plan/index.ts';
import { masterOf, place } from '../parts/example-masters.ts';
import { exampleMold } from '../parts/example-mold.ts';
import { ellipsoid } from './shaped-masters.ts';

/** Cells asked for, and what came of it: the surface itself, of 25 million nodes, is not computed here. */
function settled(cell: number) {
  const { plan } = readPlan(
    new TextEncoder().encode(
      `process: rubber\ndisc: { diameter: 300, thickness: 20 }\nparting: { cell: ${cell} }\n`,
    ),
    'plan.yaml',
  );
  if (!plan) throw new Error('the plan cannot be read');
  const mesh = ellipsoid(4, 4, 4);
  const placed = [{ ...place(masterOf('ball', mesh), 'one', { radius: 0, angleRad: 0 }), mesh }];
  const { disc } = exampleMold();
  const fixed = {
    process: 'rigid' as const,
    disc: { ...disc, radius: 150 },
    sprue: undefined,
    bosses: [],
    tabs: [],
    notches: [],
  };
  const asked: number[] = [];
  const { findings } = resolveParting(plan, placed, fixed, (_kind, input) => {
    asked.push((input as { cell: number }).cell);
    return { surface: flatPartingSurface(150), findings: [] } as never;
  });
  return { asked, findings };
}

// 25 million cells, 5000 a side, across 300 mm: 0.06 mm each.
test('cells finer than memory has room for are made coarser, and that is said', () => {
  const { asked, findings } = settled(0.05);
  expect(asked).toEqual([0.06]);
  expect(findings).toMatchObject([{ code: 'layout.too-fine', severity: 'note', subject: 'parting' }]);
});

test('cells for which there is room are taken as asked for', () => {
  expect(settled(0.07)).toEqual({ asked: [0.07], findings: [] });
});
