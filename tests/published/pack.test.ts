import { expect, it } from 'vitest';
import { pack } from '../../src/checks/can/pack.ts';
import { rubberLedger } from '../../src/checks/can/rubber-ledger.ts';
import type { Mold } from '../../src/mold/index.ts';
import { nutBore } from '../../src/tables/index.ts';
import { emptyMold, figureOf, nutAt, runCheck, smallSprue, withMaster } from '../checks/small-mold.ts';

/** A box of 10 x 20 x 4 mm: 800 mm3. */
const box = {
  positions: Float32Array.from(
    [0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) => [i & 1 ? 10 : 0, i & 2 ? 20 : 0, i & 4 ? 4 : 0]),
  ),
  triangles: Uint32Array.from([
    0, 2, 1, 1, 2, 3, 4, 5, 6, 5, 7, 6, 0, 1, 4, 1, 5, 4, 2, 6, 3, 3, 6, 7, 0, 4, 2, 2, 4, 6, 1, 3, 5, 3, 7,
    5,
  ]),
};
const identity = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1] as const;
const mold = (can: object, rubber: object = {}, other: Partial<Mold> = {}): Mold => ({
  ...withMaster(emptyMold, 'charm', box, identity),
  ...other,
  bench: {
    can: { diameter: 250, depth: 25.4, ...can },
    rubber: { expansionPerK: 6.6e-4, ...rubber },
    cure: { temperatureC: 155, startC: 20 },
  },
});
const codesOf = ({ findings }: { findings: readonly { code: string }[] }) => findings.map(({ code }) => code);
const disc = (Math.PI / 4) * 250 ** 2 * 25.4;

// Cubic expansion, 6.6e-4 /K over 135 K: 8.91 %. Held in by a can that does not give, K dV / V with K 2 GPa (memory).
it('a can filled to the brim', async () => {
  const report = await runCheck(pack, mold({ spew: 'none' }));
  expect(codesOf(report)).toEqual(['pack.locked']);
  expect(figureOf(report, 'pack.can', 'can')).toBeCloseTo(disc, 3);
  expect(figureOf(report, 'pack.cold', 'can')).toBeCloseTo(disc + 800, 1);
  expect(figureOf(report, 'pack.excess', 'can')).toBeCloseTo(0.0891 * disc + 800, 1);
  expect(figureOf(report, 'pack.lock', 'can') / 1e6).toBeCloseTo((2000 * (0.0891 * disc + 800)) / disc, 3);
});

// DIN 1587 M8: hexagon 13 x 6.5 by (sqrt 3 / 2) s^2 h; head: cylinder and half ball of 12.5 (closed forms).
it('a cap nut takes up its hexagon, collar and dome, but rubber its bore', async () => {
  const plain = figureOf(await runCheck(pack, mold({})), 'pack.cold', 'can');
  const nut = figureOf(
    await runCheck(pack, mold({}, {}, { bosses: [nutAt('n', 80, 0)] })),
    'pack.cold',
    'can',
  );
  const head = Math.PI * 6.25 ** 2 * (8.5 - 6.25) + (2 / 3) * Math.PI * 6.25 ** 3;
  const hexagon = (Math.sqrt(3) / 2) * 13 ** 2 * 6.5;
  const { diameter = 0, depth = 0 } = nutBore('M8') ?? {};
  const bore = (Math.PI / 4) * diameter ** 2 * depth;
  expect(bore).toBeGreaterThan(100);
  expect((nut - plain) / (head + hexagon - bore)).toBeCloseTo(1, 6);
});

// Frustum of a cone: pi h (R^2 + R r + r^2) / 3; cap: pi h (3 a^2 + h^2) / 6.
it('a sprue form takes up its shaft and its well less the dome, and no more than its grip leaves', async () => {
  const sprue = { ...smallSprue, fillet: 0 };
  const cold = async (other: Partial<Mold>) =>
    figureOf(await runCheck(pack, mold({}, {}, other)), 'pack.cold', 'can');
  const lean = Math.tan(sprue.draftRad);
  const frustum = (from: number, high: number) => {
    const to = from - high * lean;
    return (Math.PI * high * (from ** 2 + from * to + to ** 2)) / 3;
  };
  const dome = (Math.PI * sprue.domeHeight * (3 * sprue.domeRadius ** 2 + sprue.domeHeight ** 2)) / 6;
  const whole = frustum(sprue.holeRadius, 12.7) + frustum(sprue.wellRadius, sprue.wellDepth) - dome;
  // The dome is drawn by chords of 0.01 mm at most.
  expect(((await cold({ sprue })) - (await cold({}))) / whole).toBeCloseTo(1, 3);
});

// A tab of 20 x 10 x 4 mm, a quarter as high at its inner edge: w l (h + h / 4) / 2 = 500 mm3 (prism of a trapezoid).
it('a tab takes up its wedge', async () => {
  const tab = { id: 't', angleRad: 0, width: 20, length: 10, height: 4, inset: 1 };
  const [without, withTab] = await Promise.all(
    [mold({}), mold({}, {}, { tabs: [tab] })].map((one) => runCheck(pack, one)),
  );
  const cold = [without, withTab].map((report) => figureOf(report, 'pack.cold', 'can'));
  expect(cold[1] - cold[0]).toBeCloseTo(500, 6);
});

// Masters aside, rubber round steel: K dV / V of the rubber alone, dV = 8.91 % of the rubber; what lies in it neither
// swells by that measure nor gives.
it('a can filled to the brim, nuts, sprue form and tab in it', async () => {
  const tab = { id: 't', angleRad: 0, width: 20, length: 10, height: 4, inset: 1 };
  const inserts = { bosses: [nutAt('n', 80, 0)], sprue: smallSprue, tabs: [tab] };
  // Weighed so that rubber and metal fill the can exactly, cold.
  const solids = figureOf(await runCheck(pack, mold({}, {}, inserts)), 'pack.cold', 'can') - disc;
  const laidInKg = ((disc - solids) / 1e9) * 1150;
  const report = await runCheck(pack, mold({ spew: 'none' }, { laidInKg, densityKgM3: 1150 }, inserts));
  expect(solids).toBeGreaterThan(5000);
  expect(figureOf(report, 'pack.cold', 'can')).toBeCloseTo(disc, 1);
  // The metal does not swell by the rubber's measure: the excess is less, the pressure on what rubber there is the same.
  expect(figureOf(report, 'pack.excess', 'can')).toBeCloseTo(0.0891 * (disc - solids), 1);
  expect(figureOf(report, 'pack.lock', 'can') / 1e6).toBeCloseTo(178.2, 4);
});

// What is left beside a master of 800 mm3: (V_can - 800) 0.95, 1150 kg/m3.
it('rubber by share of the room that is left', async () => {
  const report = await runCheck(pack, mold({ spew: 'open' }, { laidInShare: 0.95, densityKgM3: 1150 }));
  const volume = 0.95 * (disc - 800);
  expect(figureOf(report, 'pack.laidIn', 'can')).toBeCloseTo(volume * 1150e-9, 6);
  expect(figureOf(report, 'pack.cold', 'can')).toBeCloseTo(volume + 800, 1);
  expect(figureOf(report, 'pack.excess', 'can')).toBeCloseTo(1.0891 * volume + 800 - disc, 1);
});

it.each<[string[], object, object]>([
  [['pack.flows-out'], { spew: 'open' }, {}],
  [['pack.way-out'], {}, {}],
  [['pack.short'], { depth: 30 }, {}],
  [['pack.short'], {}, { laidInKg: 1, densityKgM3: 1150 }],
  [['pack.not-checked'], { depth: undefined }, {}],
  [['pack.not-checked'], {}, { expansionPerK: undefined }],
  [['pack.not-checked'], {}, { laidInKg: 1 }],
])('%j', async (codes, can, rubber) => {
  expect(codesOf(await runCheck(pack, mold(can, rubber)))).toEqual(codes);
});

it('a master takes the place of its own volume', async () => {
  const one = mold({});
  const [charm] = one.placements;
  const two = { ...one, placements: [charm, { ...charm, id: 'double', scale: 2 }] };
  const report = await runCheck(rubberLedger, two);
  expect(figureOf(report, 'ledger.displaced', 'charm-1')).toBeCloseTo(800, 6);
  expect(figureOf(report, 'ledger.displaced', 'double')).toBeCloseTo(6400, 6);
});
