import { expect, test } from 'vitest';
import { exportSolid } from '../../src/export/index.ts';
import { identity, joinMeshes } from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { ofMaster } from '../../src/pipeline/of-master.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { asMesh, box, without } from '../mesh/rough-shapes.ts';
import { masterOf, place, ball as roundBall } from '../parts/example-masters.ts';

const kernel = await loadKernel();
const cube = box([10, 10, 10]);
const solidOf = (mesh: ReturnType<typeof asMesh>) => ({
  id: 'upper-half',
  title: 'upper half',
  role: 'half' as const,
  subjects: ['mold'],
  mesh,
  toMold: identity,
  estimated: false,
});
const crossing = solidOf(joinMeshes([asMesh(cube), asMesh(box([10, 10, 10], [4, 5, 6]))]));
const open = solidOf(asMesh(without(cube, (face) => face === 0)));
const placements = [place(masterOf('toad', roundBall(kernel, 12)), 'toad-1', { radius: 0, angleRad: 0 })];

test('a solid whose faces cross is written, and said of the master that lies there', async () => {
  const [found] = (await exportSolid(crossing)).findings;
  expect(found).toMatchObject({ code: 'solid.crossed', severity: 'warn', subject: 'upper-half' });
  // The second box stands 4 mm into the first at least.
  expect(found.values.deepest).toBeGreaterThanOrEqual(4);
  const told = ofMaster(found, { placements });
  expect(told).toMatchObject({ subject: 'toad', values: { master: 'toad' } });
  expect(sayFinding(told, 'metric').says).toMatch(/where master toad was cut in/);
});

test('one that is not closed is withheld alone; the fault is the master, not the program, only where one lies', async () => {
  const [found] = (await exportSolid(open)).findings;
  const told = ofMaster(found, { placements });
  expect(told).toMatchObject({ code: 'solid.not-closed', severity: 'stop', subject: 'upper-half' });
  expect(sayFinding(told, 'metric').remedy).toMatch(/Mend the master/);
  expect(sayFinding(ofMaster(found, { placements: [] }), 'metric').remedy).toMatch(/fault of the program/);
});
