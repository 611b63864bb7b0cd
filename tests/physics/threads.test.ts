import { expect, it } from 'vitest';
import { inchStressArea, metricStressArea } from '../../src/physics/index.ts';

// Printed: 58.0 mm2 for M10 x 1.5 (ISO 898-1), 0.1419 in2 for 1/2-13 UNC (ASME B1.1).
it('stress areas of an M10 and of a half inch', () => {
  expect(metricStressArea(10, 1.5)).toBeCloseTo(58, 1);
  expect(inchStressArea(0.5, 13)).toBeCloseTo(0.1419, 4);
});
