import { beforeAll, expect, test } from 'vitest';
import { boundsOf } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import type { Tools } from '../../../src/mold/index.ts';
import { halves } from '../../../src/parts/halves/halves.ts';
import { patternPlate, plateFloor, plateWall } from '../../../src/parts/halves/pattern-plate.ts';
import { ball, masterOf, ring } from '../example-masters.ts';
import { exampleMold, shareAt, solidsOf, volumeOf } from '../example-mold.ts';
import { pairEdges } from '../pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

const mold = (process: 'poured' | 'rigid') => {
  const master = masterOf('button', ball(tools.kernel, 6));
  const whole = exampleMold({
    process,
    masters: [master],
    placements: ring(master, 5, 48, { z: 1 }),
    bosses: [
      {
        id: 'nut',
        kind: 'cap nut',
        x: -60,
        y: 0,
        turnRad: 0.3,
        size: 'M6',
        acrossFlats: 10,
        rootDepth: 5,
        headRadius: 4.75,
        headHeight: 7,
        clearance: 0,
      },
    ],
  });
  return { ...whole, disc: { ...whole.disc, rimChamfer: 0, label: '' } };
};

test('plate and poured half fill the cup: floor, wall and brim', () => {
  const poured = mold('poured');
  const { radius, lower, upper } = poured.disc;
  const plates = solidsOf(patternPlate, poured, tools);
  const poursInto = solidsOf(halves, poured, tools);
  const cupRadius = radius + plateWall;
  for (const [i, thickness] of [lower, upper].entries()) {
    const cup = Math.PI * cupRadius ** 2 * (thickness + plateFloor) * shareAt(cupRadius);
    // The half as drawn has an index mark, a groove of 1 to 35 mm3, which the poured one has not.
    const groove = cup - volumeOf(plates[i].mesh) - volumeOf(poursInto[i].mesh);
    expect(groove).toBeGreaterThan(1);
    expect(groove).toBeLessThan(35);
    expect(pairEdges(plates[i].mesh)).toMatchObject({ unpaired: 0, flat: 0 });
    expect(boundsOf(plates[i].mesh.positions).min[2]).toBe(0);
    expect(boundsOf(plates[i].mesh.positions).max[2]).toBeCloseTo(thickness + plateFloor, 5);
  }
});

test('other processes have no plates', () => {
  expect(solidsOf(patternPlate, mold('rigid'), tools)).toEqual([]);
});

test('the name is engraved into the outside of each floor, 0.6 mm deep', () => {
  const mold = exampleMold({ process: 'poured' });
  const bare = { ...mold, disc: { ...mold.disc, label: '' } };
  const [named, plain] = [mold, bare].map((one) => solidsOf(patternPlate, one, tools));
  for (const [i, { mesh }] of named.entries()) {
    expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
    const cut = volumeOf(plain[i].mesh) - volumeOf(mesh);
    expect(cut).toBeGreaterThan(20);
    // It stands on its floor: the letters' floors lie 0.6 over the bed.
    const levels = new Set(
      Array.from(
        mesh.positions.filter((_, k) => k % 3 === 2),
        (z) => z.toFixed(4),
      ),
    );
    expect(levels.has('0.6000')).toBe(true);
  }
});
