import { expect, test } from 'vitest';
import type { Point2 } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { wider } from '../../../src/parts/plate/plate-window.ts';
import { obstaclesOf } from '../../../src/parts/printing/obstacles.ts';
import { box } from '../../export/shapes.ts';
import { masterOf, place } from '../example-masters.ts';
import { exampleMold } from '../example-mold.ts';

const kernel = await loadKernel();

/** Area (mm2) of the window round a square of 20 mm with a notch 5 mm deep in its upper side. */
const windowRound = (notch: number, gap: number, footChamfer = 0): number =>
  kernel.scope((scope) => {
    const [h, n] = [10, notch / 2];
    const ring: Point2[] = [
      [-h, -h],
      [h, -h],
      [h, h],
      [n, h],
      [n, h - 5],
      [-n, h - 5],
      [-n, h],
      [-h, h],
    ];
    return wider(scope, scope.slice(scope.extrude([ring], 0, 1, 'foot'), 0.5), gap, footChamfer).area();
  });

test('a window is wider by the gap all round; a finger of 1 mm stays, a thinner one goes', () => {
  const gap = 0.25;
  const square = (20 + 2 * gap) ** 2;
  // What reaches into the notch is 3 - 2 x 0.25 wide and as long as the notch is deep, with both corners of its tip
  // rounded: by less than a triangle of r2 / 2 each.
  const tips = (r: number, footChamfer: number): void => {
    const off = windowRound(3, gap, footChamfer) - (square - (3 - 2 * gap) * 5);
    expect(off).toBeGreaterThan(2 * (1 - Math.PI / 4) * r * r * 0.99);
    expect(off).toBeLessThan(r * r);
  };
  tips(0.5, 0);
  tips(0.9, 0.4);
  expect(windowRound(1.4, gap)).toBeCloseTo(square, 6);
  // 0.4 mm off each edge would leave 0.7 of 1.5 mm, and 1.7 of 2.5.
  expect(windowRound(2, gap, 0.4)).toBeCloseTo(square, 6);
});

test('split lines keep off masters only where a solid shows them', () => {
  const block = masterOf('block', box([20, 10, 5], [-10, -5, -3]));
  const mold = exampleMold({
    masters: [block],
    placements: [place(block, 'a', { radius: 45, angleRad: 0 })],
  });
  expect(obstaclesOf(mold, 'layout plate').map(({ id }) => id)).toEqual(['a']);
  expect(obstaclesOf(mold, 'jig')).toEqual([]);
});
