import { expect, it } from 'vitest';
import { wallsField } from '../../../src/checks/walls/walls-field.ts';
import { translation } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { showWalls } from '../../../src/preview/worker/show-walls.ts';
import { emptyMold, runCheck, withMaster } from '../../checks/small-mold.ts';
import { revolved, single } from '../../revolved-solids.ts';

const meridian = Array.from({ length: 61 }, (_, i) => {
  const angle = -Math.PI / 2 + (Math.PI * i) / 60;
  return [i % 60 === 0 ? 0 : 6 * Math.cos(angle), 6 * Math.sin(angle)] as const;
});
const places = Array.from({ length: 20 }, (_, i) =>
  translation(90 * Math.cos((Math.PI * i) / 10), 90 * Math.sin((Math.PI * i) / 10), 0),
);

// Balls of 6 mm, 16 mm from one another and 29 from the rim, in halves of 12.7: nearest is an outer face, 12.7 less the
// height over or under the plane.
it('every corner that is drawn has the distance of its own place, on a reduced mesh too', async () => {
  const mold = withMaster(emptyMold, 'seed', single(revolved(meridian, 100)), ...places);
  const { fields } = await runCheck(wallsField, mold);
  const { meshes, walls } = showWalls(mold, fields, await loadKernel());
  expect(walls).toHaveLength(20);
  const { positions, full } = meshes[0].mesh;
  expect(positions.length / 9).toBeLessThan(full);
  for (const { distances } of walls) {
    expect(distances).toHaveLength(positions.length / 3);
    const off = distances.map((distance, corner) => distance - (12.7 - Math.abs(positions[3 * corner + 2])));
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(1e-4);
  }
});
