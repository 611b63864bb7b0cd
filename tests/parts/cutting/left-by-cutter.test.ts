import { beforeAll, expect, test } from 'vitest';
import { movePoint, type TriangleMesh } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import type { Cutter, Memoize, Mold, Tools } from '../../../src/mold/index.ts';
import { leftByCutter } from '../../../src/parts/cutting/left-by-cutter.ts';
import { halves } from '../../../src/parts/halves/halves.ts';
import { box } from '../../export/shapes.ts';
import { ball, masterOf, ring } from '../example-masters.ts';
import { exampleMold, volumeOf } from '../example-mold.ts';
import { pairEdges } from '../pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

/** A disc 60 mm across with one square pocket, 12 x 12 x 4 mm, in the lower half. */
function run(cutter: Cutter, pocket: TriangleMesh = box([12, 12, 4], [-6, -6, -4])) {
  const { sprue: _, ...mold } = exampleMold();
  const master = masterOf('button', pocket);
  const whole: Mold = {
    ...mold,
    disc: { ...mold.disc, radius: 30, label: '' },
    masters: [master],
    placements: ring(master, 1, 12, { z: 0 }),
    fixture: { ...mold.fixture, cutter },
  };
  const [output] = leftByCutter.units(whole).map((unit) => unit.run(tools));
  return { ...output, placement: whole.placements[0].id };
}

test('a flat mill in a square pocket leaves four corners of (1 - pi/4) R2 each, closed, in the lower half', () => {
  const { solids, findings, placement } = run({ diameter: 4, kind: 'flat' });
  expect(solids.map(({ id }) => id)).toEqual(['left-by-cutter-lower']);
  expect(pairEdges(solids[0].mesh)).toMatchObject({ unpaired: 0, flat: 0 });
  const exact = 4 * (1 - Math.PI / 4) * 4 * 4;
  const edge = 4 * (2 + Math.PI / 2) * 2;
  const volume = volumeOf(solids[0].mesh);
  expect(volume).toBeLessThan(exact);
  // 8 nodes in the radius: half a cell of 0.25 mm along the edges is not counted.
  expect(volume).toBeGreaterThan(exact - (edge * 4 * 0.25) / 2 - 1);
  expect(findings.map(({ code, subject }) => [code, subject])).toEqual([
    ['cutter.left', placement],
    ['cutter.inner-radius', 'lower-half'],
  ]);
  expect(findings[0].values.measured).toBeCloseTo(volume, 2);
  // In a corner of the pocket, on its floor.
  const [x, y, z] = findings[0].place ?? [0, 0, 0];
  expect(Math.abs(x - 12)).toBeGreaterThan(5);
  expect(Math.abs(y)).toBeGreaterThan(5);
  expect(z).toBeCloseTo(-4, 3);
});

test('the corners of that pocket run in sharp; half a ball has its own radius, less facets and finish', () => {
  const tightestOf = (master?: TriangleMesh) =>
    run({ diameter: 4, kind: 'flat' }, master).findings.filter(({ code }) => code === 'cutter.inner-radius');
  const [sharp] = tightestOf();
  expect(sharp.values.measured).toBe(0);
  expect(Math.abs((sharp.place?.[0] ?? 0) - 12)).toBeCloseTo(6, 3);
  expect(Math.abs(sharp.place?.[1] ?? 0)).toBeCloseTo(6, 3);
  const both = tightestOf(ball(tools.kernel, 4));
  expect(both.map(({ subject }) => subject)).toEqual(['lower-half', 'upper-half']);
  for (const { values } of both) {
    expect(values.measured).toBeLessThan(4);
    expect(values.measured).toBeGreaterThan(4 * Math.cos(Math.PI / 64) ** 2 - 0.02);
  }
});

test('a solid left stands in its half: brought to the mold frame it lies inside the pocket', () => {
  const { solids } = run({ diameter: 4, kind: 'flat' });
  const { positions } = solids[0].mesh;
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = movePoint(solids[0].toMold, [positions[i], positions[i + 1], positions[i + 2]]);
    expect(Math.max(Math.abs(x - 12), Math.abs(y))).toBeLessThan(6.001);
    expect(z).toBeGreaterThan(-4.001);
    expect(z).toBeLessThan(0.001);
  }
});

test('a ball leaves a fillet along the foot of every wall: (1 - pi/4) R2 a length', () => {
  const { solids } = run({ diameter: 3, kind: 'ball' }, box([14, 14, 5], [-7, -7, -5]));
  const volume = volumeOf(solids[0].mesh);
  const fillet = (1 - Math.PI / 4) * 1.5 * 1.5;
  // Along the walls less the corners, and at most all the height of the corners besides.
  expect(volume).toBeGreaterThan(0.6 * 4 * 11 * fillet);
  expect(volume).toBeLessThan(4 * 14 * fillet + 4 * 5 * fillet);
});

/** A ball of 8 mm with its middle 7 mm under the parting plane: the lip over it has an angle of acos(7 / 8), 29 degrees. */
function overhung(making?: NonNullable<Mold['fixture']['making']>): Mold {
  const { sprue: _, ...mold } = exampleMold();
  const master = masterOf('seed', ball(tools.kernel, 8, 96));
  return {
    ...mold,
    disc: { ...mold.disc, radius: 30, label: '' },
    masters: [master],
    placements: ring(master, 1, 12, { z: -7 }),
    fixture: { ...mold.fixture, ...(making && { making }) },
  };
}

test('machined halves name their knife edges without a cutter, sharpest angle and length all round', () => {
  const [{ solids, findings }] = leftByCutter
    .units(overhung({ process: 'machined', leastFeature: 0.5 }))
    .map((unit) => unit.run(tools));
  expect(solids).toEqual([]);
  expect(findings.map(({ code, subject }) => [code, subject])).toEqual([['cutter.knife-edge', 'lower-half']]);
  const [{ values, place = [0, 0, 0] }] = findings;
  // The circle in the plane has a radius of sqrt(64 - 49); bits of it lie at slivers, which have no direction.
  expect(values.measured).toBeGreaterThan(2 * Math.PI * Math.sqrt(15) * 0.94);
  expect(values.measured).toBeLessThan(2 * Math.PI * Math.sqrt(15));
  expect(Math.abs(Number(values.sharpest) - (Math.acos(7 / 8) * 180) / Math.PI)).toBeLessThan(2);
  expect(Math.hypot(place[0] - 12, place[1])).toBeCloseTo(Math.sqrt(15), 1);
  expect(place[2]).toBeCloseTo(0, 4);
});

test('a plan that names neither cutter nor mill asks for nothing', () => {
  expect(leftByCutter.units(overhung())).toEqual([]);
  expect(leftByCutter.units(overhung({ process: 'FDM', leastFeature: 0.8 }))).toEqual([]);
});

test('the halves are made once for both works', () => {
  const made = new Map<string, unknown>();
  let count = 0;
  const memoize: Memoize = (what, input, make) => {
    const key = `${what} ${JSON.stringify(input).length}`;
    if (!made.has(key)) {
      made.set(key, make());
      count++;
    }
    return made.get(key) as ReturnType<typeof make>;
  };
  const mold = overhung({ process: 'machined', leastFeature: 0.5 });
  const outputs = [halves, leftByCutter].flatMap((part) =>
    part.units(mold).map((unit) => unit.run({ ...tools, memoize })),
  );
  expect(outputs[0].solids).toHaveLength(2);
  expect(outputs[1].findings).toHaveLength(1);
  expect(count).toBe(1);
});
