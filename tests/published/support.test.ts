import { expect, test } from 'vitest';
import { freeLength } from '../../src/checks/release/free-length.ts';
import { support } from '../../src/checks/release/support.ts';
import { joinMeshes, translation } from '../../src/geometry/index.ts';
import { emptyMold, figureOf, runCheck, withMaster } from '../checks/small-mold.ts';
import { box, single } from '../revolved-solids.ts';

// Closed form: a block with a shelf l = 10 mm long, b = 4 wide, t = 1 thick, g = 2 over the plane: slenderness l / t.
test('support.slenderness, support.gap and support.free of a shelf are l / t, g and l b', async () => {
  const shelf = joinMeshes([single(box([-6, -2, -2], [0, 2, 3])), single(box([0, -2, 2], [10, 2, 3]))]);
  const report = await runCheck(support, withMaster(emptyMold, 'shelf', shelf, translation(60, 0, 0)));
  expect(figureOf(report, 'support.slenderness', 'shelf-1') / 10).toBeCloseTo(1, 1);
  expect(figureOf(report, 'support.gap', 'shelf-1')).toBeCloseTo(2, 6);
  expect(figureOf(report, 'support.free', 'shelf-1') / 40).toBeCloseTo(1, 1);
  expect(figureOf(report, 'support.held', 'shelf-1')).toBe(0);
});

// Zhao, A fast sweeping method for eikonal equations, Math. Comp. 74 (2005): first order; from a point the error is
// of the order of h log h. Distances from the middle of a square.
test('support.slenderness: lengths from a point come close to the true distance', () => {
  const n = 201;
  const mask = new Uint8Array(n * n).fill(1);
  mask[100 * n + 100] = 2;
  const h = 0.05;
  const length = freeLength(mask, { nx: n, ny: n, cell: h });
  let worst = 0;
  for (let j = 0; j < n; j++)
    for (let i = 0; i < n; i++)
      worst = Math.max(worst, Math.abs(length[j * n + i] - h * Math.hypot(i - 100, j - 100)));
  expect(worst).toBeLessThan(h * Math.abs(Math.log(h)));
  expect(length[100 * n + 200]).toBeCloseTo(5, 9);
});
