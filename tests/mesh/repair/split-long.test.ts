import { expect, test } from 'vitest';
import { splitLong } from '../../../src/mesh/repair/split-long.ts';
import { asMesh, ball, box, shapeOf, volumeOf } from '../rough-shapes.ts';

test.each([
  ['a box', box([32, 16, 8])],
  ['a ball', ball(10, 24)],
])('%s keeps its volume, and no side is longer than asked', (_, shape) => {
  const split = shapeOf(splitLong(asMesh(shape), 2));
  expect(volumeOf(split) / volumeOf(shape)).toBeCloseTo(1, 6);
  for (const face of split.faces) {
    for (let k = 0; k < 3; k++) {
      const [a, b] = [split.points[face[k]], split.points[face[(k + 1) % 3]]];
      expect(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])).toBeLessThanOrEqual(2 + 1e-5);
    }
  }
});
