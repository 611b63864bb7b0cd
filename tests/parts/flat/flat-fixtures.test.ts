import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { heatOfCure } from '../../../src/checks/heat/heat-cure.ts';
import { exportSolid } from '../../../src/export/index.ts';
import { areaOf, translation } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import {
  type Boss,
  type Channel,
  type Drawing,
  flatPartingSurface,
  type Mold,
  type Part,
  type Solid,
  sizeOf,
} from '../../../src/mold/index.ts';
import { canParts } from '../../../src/parts/flat/can-parts.ts';
import { depthGauge } from '../../../src/parts/flat/depth-gauge.ts';
import { knifeStencil } from '../../../src/parts/flat/knife-stencil.ts';
import { layoutPlate } from '../../../src/parts/flat/layout-plate.ts';
import { registrationJig } from '../../../src/parts/registration/registration-jig.ts';
import { capNut, mediumTolerance } from '../../../src/tables/index.ts';
import { box, tetrahedron } from '../../export/shapes.ts';
import { judgeStl } from '../../judges.ts';
import { straightChannel } from '../../straight-channel.ts';
import { exampleMold, volumeOf } from '../example-mold.ts';

const kernel = await loadKernel();
const made = (part: Part, mold: Mold) => part.units(mold).map((unit) => unit.run({ kernel }));

const nut = (id: string, size: string, x: number, y: number): Boss => {
  const row = capNut(size);
  if (!row) throw new Error(size);
  return {
    id,
    kind: 'cap nut',
    x,
    y,
    turnRad: 0.2,
    size,
    acrossFlats: row.acrossFlats,
    rootDepth: row.hexHeight,
    headRadius: row.domeDiameter / 2,
    headHeight: row.height - row.hexHeight,
    clearance: 0,
  };
};
const bosses = [nut('boss-1', 'M8', 60, 0), nut('boss-2', 'M8', -30, 52), nut('boss-3', 'M6', -20, -56)];
const rubber = (changes: Partial<Mold> = {}): Mold => exampleMold({ process: 'rubber', bosses, ...changes });

const cutArea = ({ marks }: Drawing): number =>
  marks.filter(({ layer }) => layer === 'cut').reduce((sum, { outline }) => sum + areaOf(outline), 0);

/** Both independent programs find nothing; the volume is that of our own sum. */
async function sound(solid: Solid): Promise<void> {
  const { bytes, findings } = await exportSolid(solid);
  expect(findings).toEqual([]);
  const folder = mkdtempSync(join(tmpdir(), 'flat-'));
  try {
    const path = join(folder, 'one.stl');
    writeFileSync(path, bytes);
    expect(judgeStl(path).faults).toEqual([]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

describe('registration jig', () => {
  const [{ solids, drawings = [], findings }] = made(registrationJig, rubber());

  test('openings are hexagons over the greatest width of DIN 1587 with the printing clearance on both sides', () => {
    const [{ marks }] = drawings;
    const openings = marks[0].outline.slice(-3).map((path) => -areaOf([path]));
    // A = sqrt(3) / 2 s2; s max of M8 is 13, of M6 10; resin is printed: 2 x 0.2.
    const hexagon = (s: number): number => (Math.sqrt(3) / 2) * s * s;
    expect(openings[0]).toBeCloseTo(hexagon(13.4), 9);
    expect(openings[2]).toBeCloseTo(hexagon(10.4), 9);
    expect(findings).toEqual([]);
  });

  test('machined of metal they are wider by what ISO 2768-1 m lets a shop be off', () => {
    const mold = rubber({ fixture: { ...rubber().fixture, material: 'aluminum' } });
    const [one] = made(registrationJig, mold);
    const opening = one.drawings?.[0].marks[0].outline.at(-1);
    expect(opening && -areaOf([opening])).toBeCloseTo((Math.sqrt(3) / 2) * 10.2 ** 2, 9);
  });

  test('volume: area of the drawing times thickness, less the engraving', async () => {
    const [solid] = solids;
    const plain = cutArea(drawings[0]) * 6.5;
    const volume = volumeOf(solid.mesh);
    expect(volume).toBeLessThan(plain);
    expect(volume).toBeGreaterThan(plain * 0.985);
    await sound(solid);
  });

  test('one way: the outer edge fits itself neither turned over nor turned round', () => {
    const [edge] = drawings[0].marks[0].outline;
    if (edge.kind !== 'track') throw new Error('the edge has no marks');
    const notches = edge.corners
      .filter(({ bulge = 0 }) => bulge === -1 || bulge === 0)
      .map(({ at }) => Math.atan2(at[1], at[0]));
    const [index] = notches.filter((angle) => Math.abs(angle) < 0.05);
    expect(Math.abs(index)).toBeLessThan(0.05);
    const key = notches.filter((angle) => Math.abs(angle) > 0.05);
    expect(key.length).toBeGreaterThan(0);
    for (const angle of key) expect(notches.some((other) => Math.abs(other + angle) < 0.05)).toBe(false);
  });

  test('a nut at the rim leaves too little ring', () => {
    const [{ findings: found }] = made(registrationJig, rubber({ bosses: [nut('boss-1', 'M8', 66.5, 0)] }));
    expect(found.map(({ code, subject }) => [code, subject])).toEqual([['jig.thin', 'registration-jig']]);
    expect(found[0].values.measured).toBeCloseTo(75 - 0.2 - 66.5 - 13.4 / Math.sqrt(3), 9);
  });

  test('as wide and thick as the plan says: the opening of the ring, and the area times thickness', () => {
    const fixture = { ...rubber().fixture, jigWidth: 40, jigThickness: 8 };
    const [{ drawings: [drawn] = [], findings: found }] = made(registrationJig, rubber({ fixture }));
    const [, ring] = drawn.marks[0].outline;
    expect(-areaOf([ring])).toBeCloseTo(Math.PI * (75 - 0.2 - 40) ** 2, 9);
    expect(drawn.thickness).toBe(8);
    expect(found).toEqual([]);
  });

  test('a ring narrower than the nuts is one finding, which names the worst', () => {
    const fixture = { ...rubber().fixture, jigWidth: 12 };
    const [{ findings: found }] = made(registrationJig, rubber({ fixture }));
    expect(found.map(({ code, subject, severity }) => [code, subject, severity])).toEqual([
      ['jig.thin', 'registration-jig', 'stop'],
    ]);
    // An M8 nut reaches 13.4 / sqrt(3) inward from its place; the ring ends at 75 - 0.2 - 12.
    const inward = 60 - 13.4 / Math.sqrt(3) - (75 - 0.2 - 12);
    expect(found[0].values.measured).toBeCloseTo(inward, 9);
    expect(found[0].values).toMatchObject({ boss: 'boss-1', more: 2 });
  });

  test('a ring thinner than the hexagons of DIN 1587 is said', () => {
    const fixture = { ...rubber().fixture, jigThickness: 5 };
    const [{ findings: found }] = made(registrationJig, rubber({ fixture }));
    expect(found.map(({ code, severity }) => [code, severity])).toEqual([['jig.low', 'warn']]);
    expect(found[0].values.limit).toBe(6.5);
  });

  test('none without bosses', () => expect(made(registrationJig, rubber({ bosses: [] }))).toEqual([]));
});

describe('parts for the can', () => {
  const can = { diameter: 170, depth: 40 };

  test('plate and rings against pi (R2 - r2) h', async () => {
    const parts = made(canParts, rubber({ bench: { can } })).map(
      ({ solids: [solid], drawings: [drawing] = [] }) => ({
        solid,
        drawing,
      }),
    );
    expect(parts.map(({ solid }) => solid.id)).toEqual(['can-spacer', 'centering-collar', 'thickness-stop']);
    // Can and plate may both be off by 0.5 (ISO 2768-1 m, 120 to 400).
    const outer = 85 - 0.5;
    const inner = 75 + 0.25;
    const height = 40 - 19.05 - 12.7;
    const exact = [outer ** 2 * height, (outer ** 2 - inner ** 2) * 19.05, (outer ** 2 - inner ** 2) * 12.7];
    for (const [i, { solid, drawing }] of parts.entries()) {
      expect(cutArea(drawing) * (drawing.thickness ?? 0)).toBeCloseTo(Math.PI * exact[i], 6);
      expect(volumeOf(solid.mesh) / (Math.PI * exact[i])).toBeCloseTo(1, 2);
      expect(volumeOf(solid.mesh)).toBeLessThan(Math.PI * exact[i]);
      await sound(solid);
    }
  });

  test('of PLA they do not stand the cure, and the stop is about each of them', () => {
    const bench = { can, cure: { temperatureC: 155 } };
    const mold = rubber({ bench, bosses: [], fixture: { ...rubber().fixture, material: 'PLA' } });
    const { findings = [] } = heatOfCure.units(mold)[0].run({ kernel });
    const soft = findings.filter(({ code, severity }) => code === 'heat.fixture-soft' && severity === 'stop');
    const solids = made(canParts, mold).flatMap((one) => one.solids.map(({ id }) => id));
    expect(soft.map(({ subject }) => subject)).toEqual(expect.arrayContaining(solids));
  });

  test('none where the can fits the disc', () => {
    expect(made(canParts, rubber({ bench: { can: { diameter: 151, depth: 31.75 } } }))).toEqual([]);
    expect(made(canParts, rubber())).toEqual([]);
  });
});

describe('depth gauge', () => {
  const placement = (id: string, lowest: number): Mold['placements'][number] => ({
    id,
    master: 'x',
    x: 0,
    y: 0,
    turnRad: 0,
    scale: 1,
    matrix: [],
    lowest,
    highest: 3,
    reach: 5,
    estimated: false,
  });
  const mold = rubber({
    placements: [placement('a', -4.04), placement('b', -2.5), placement('c', -3.96), placement('d', 0)],
  });

  test('a tooth for each depth: area = back x length + tooth x sum of depths', async () => {
    const [{ solids, drawings = [] }] = made(depthGauge, mold);
    expect(cutArea(drawings[0])).toBeCloseTo(14 * (8 + 2 * 14) + 6 * (2.5 + 4), 9);
    const { min, max } = sizeOf(drawings[0]);
    expect([min[1], max[1]]).toEqual([-4, 14]);
    expect(drawings[0].subjects).toEqual(['b', 'a', 'c']);
    await sound(solids[0]);
  });
});

describe('knife stencil', () => {
  const channel = (id: string, half: 'lower' | 'upper', to: readonly [number, number]): Channel =>
    straightChannel({
      id,
      kind: 'gate',
      placement: 'a',
      from: [17, 0],
      to,
      width: 3,
      depth: 1.5,
      half,
    });

  test('a slot as wide as the channel from the well on; the upper half is seen turned over', () => {
    const channels = [channel('g-1', 'lower', [40, 20]), channel('g-2', 'upper', [40, 20])];
    const drawn = made(knifeStencil, rubber({ channels })).map(({ drawings: [drawing] = [] }) => drawing);
    expect(drawn.map(({ id }) => id)).toEqual(['lower-knife-stencil', 'upper-knife-stencil']);
    const slot = (one: Drawing) => one.marks[0].outline.slice(-1);
    const length = Math.hypot(23, 20) - (19 - 17);
    for (const one of drawn) expect(-areaOf(slot(one))).toBeCloseTo(3 * length, 9);
    const ends = drawn.map((one) => sizeOf({ ...one, marks: [{ ...one.marks[0], outline: slot(one) }] }));
    expect(ends[1].min[1]).toBeCloseTo(-ends[0].max[1], 9);
    expect(ends[1].max[0]).toBeCloseTo(ends[0].max[0], 9);
  });

  // A branch 3 wide that leaves the middle of another at a right angle: both areas less half a width of overlap.
  test('slots of channels that open into one another are one opening', () => {
    const stem = channel('g-1', 'lower', [57, 0]);
    const branch = {
      ...channel('g-2', 'lower', [40, 20]),
      run: [[40, 0] as const, [40, 20] as const].map((at) => ({ at, width: 3, depth: 1.5 })),
      opensInto: 'g-1',
    };
    const [{ drawings: [drawing] = [], findings }] = made(knifeStencil, rubber({ channels: [stem, branch] }));
    expect(findings).toEqual([]);
    const [slot] = drawing.marks[0].outline.slice(-1);
    expect(-areaOf([slot])).toBeCloseTo(3 * (40 - 2) + 3 * (20 - 1.5), 4);
  });

  test('slots that meet are said', () => {
    const channels = [channel('g-1', 'lower', [40, 5]), channel('g-2', 'lower', [40, -5])];
    const [{ findings }] = made(knifeStencil, rubber({ channels }));
    expect(findings.map(({ code }) => code)).toEqual(['stencil.slots-meet']);
  });
});

test('ISO 2768-1 class m', () => {
  expect([2, 5, 13, 100, 250, 800].map(mediumTolerance)).toEqual([0.1, 0.1, 0.2, 0.3, 0.5, 0.8]);
});

describe('layout plate', () => {
  /** A box 20 x 10, from 3 under the plane to 2 over it. */
  const block = box([20, 10, 5], [-10, -5, -3]);
  const masterOf = (mesh: typeof block): Mold['masters'][number] => ({
    id: 'block',
    kind: 'mesh',
    mesh,
    measures: {
      volume: 1000,
      area: 700,
      centroid: [0, 0, 0],
      inertia: [1, 1, 1, 0, 0, 0],
      bounds: { min: [-10, -5, -3], max: [10, 5, 2] },
    },
    estimated: false,
  });
  const put = (id: string, x: number, y: number): Mold['placements'][number] => ({
    id,
    master: 'block',
    x,
    y,
    turnRad: 0,
    scale: 1,
    matrix: translation(x, y, 0),
    lowest: -3,
    highest: 2,
    reach: Math.hypot(10, 5),
    estimated: false,
  });
  const mold = (...placements: readonly Mold['placements'][number][]): Mold =>
    rubber({ masters: [masterOf(block)], placements });

  test('openings are the outlines with clearance all round; the paper takes them as they are', async () => {
    const [{ solids, drawings = [], findings }] = made(layoutPlate, mold(put('a', 0, 40), put('b', 0, -40)));
    expect(findings).toEqual([]);
    const [plate, paper] = drawings.map(({ marks }) => marks[0].outline);
    const opening = plate.slice(-2).map((path) => -areaOf([path]));
    for (const area of opening) expect(area).toBeCloseTo(20.4 * 10.4, 3);
    for (const path of paper.slice(-2)) expect(-areaOf([path])).toBeCloseTo(200, 3);
    const volume = volumeOf(solids[0].mesh);
    expect(volume).toBeLessThan(cutArea(drawings[0]) * 3);
    expect(volume).toBeGreaterThan(cutArea(drawings[0]) * 3 * 0.97);
    await sound(solids[0]);
  });

  test('on a parting surface raised by 1 a cone is cut 1 higher', () => {
    // A corner tetrahedron 30 times as large: at height h its section is a right triangle with legs 30 - h.
    const tip = { ...tetrahedron, positions: tetrahedron.positions.map((value) => value * 30) };
    const parting = { ...flatPartingSurface(75), flat: false, heights: Float32Array.from([1, 1, 1, 1]) };
    const one = { ...put('tip', 0, 0), matrix: translation(5, 25, 0) };
    const [{ drawings = [] }] = made(
      layoutPlate,
      rubber({ masters: [masterOf(tip)], placements: [one], bosses: [], parting }),
    );
    expect(-areaOf(drawings[1].marks[0].outline.slice(-1))).toBeCloseTo(29 ** 2 / 2, 3);
  });

  test('outlines that run into each other are a stop about the plate', () => {
    const [{ findings }] = made(layoutPlate, mold(put('a', 0, 40), put('b', 20.2, 40)));
    expect(findings.map(({ code, subject, severity }) => [code, subject, severity])).toEqual([
      ['layout-plate.overlap', 'layout-plate', 'stop'],
    ]);
    expect(findings[0].values.measured).toBeCloseTo(0.2 * 10.4, 3);
  });
});
