import { expect, test } from 'vitest';
import { loadKernel } from '../../../src/kernel/index.ts';
import { halves } from '../../../src/parts/halves/halves.ts';
import { asMesh, box, insideOut, together } from '../../mesh/rough-shapes.ts';
import { masterOf, place } from '../example-masters.ts';
import { exampleMold } from '../example-mold.ts';

const kernel = await loadKernel();

test('rubber within a hollow master hangs on neither half: it is left out of both and said, with its volume', () => {
  // A box 20 mm wide with a hollow of 6 x 4 x 5 that begins at the parting plane.
  const hollow = insideOut(box([6, 4, 5], [-3, -2, 0]));
  const master = masterOf('box', asMesh(together(box([20, 20, 16], [-10, -10, -8]), hollow)));
  const mold = exampleMold({
    process: 'rubber',
    masters: [master],
    placements: [place(master, 'one', { radius: 45, angleRad: 0 })],
  });
  const [{ findings, solids }] = halves.units(mold).map((unit) => unit.run({ kernel }));
  expect(solids.map(({ id }) => id)).toEqual(['lower-half', 'upper-half']);
  expect(findings).toMatchObject([{ code: 'mold.loose-piece', severity: 'warn', subject: 'halves' }]);
  expect(findings[0].values.measured).toBeCloseTo(6 * 4 * 5, 2);
  expect(findings[0].place?.map((at) => Number(at.toFixed(3)))).toEqual([45, 0, 2.5]);
});
