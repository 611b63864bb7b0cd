import { expect, test } from 'vitest';
import { loadKernel } from '../../src/kernel/index.ts';
import { Cache } from '../../src/pipeline/index.ts';
import { makeSolids } from '../../src/pipeline/make-solids.ts';
import { asMesh, box } from '../mesh/rough-shapes.ts';
import { masterOf, place } from '../parts/example-masters.ts';
import { exampleMold } from '../parts/example-mold.ts';

test('a master that leaves nothing of a half is a stop about what could not be made, and the rest is made', async () => {
  const kernel = await loadKernel();
  const giant = masterOf('giant', asMesh(box([400, 400, 60], [-200, -200, -30])));
  const mold = exampleMold({
    masters: [giant],
    placements: [place(giant, 'one', { radius: 0, angleRad: 0 })],
  });
  const { findings, failed, solids } = makeSolids(mold, kernel, ['halves', 'sprue-form'], {
    cache: new Cache(),
  });
  const stops = findings.filter(({ severity }) => severity === 'stop');
  expect(stops.map(({ code, subject }) => [code, subject])).toEqual([['solid.failed', 'mold']]);
  expect(failed.map(({ id }) => id)).toEqual(['halves']);
  expect(solids.map(({ id }) => id)).toEqual(['sprue-form']);
});
