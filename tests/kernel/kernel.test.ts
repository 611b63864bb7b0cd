import { expect, test } from 'vitest';
import { loadKernel } from '../../src/kernel/index.ts';

test('kernel volume of a revolved square', async () => {
  const kernel = await loadKernel();
  const volume = kernel.scope((scope) =>
    scope
      .revolve(
        [
          [0, 0],
          [2, 0],
          [2, 3],
          [0, 3],
        ],
        64,
        'cylinder',
      )
      .volume(),
  );
  expect(volume).toBeCloseTo(3 * 64 * 0.5 * 4 * Math.sin((2 * Math.PI) / 64), 4);
});
