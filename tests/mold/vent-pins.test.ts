import { describe, expect, test } from 'vitest';
import { fittings } from '../../src/checks/from-mold/turning-masses.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { measureMesh } from '../../src/mesh/index.ts';
import { columnIn } from '../../src/mold/column.ts';
import { halfSolids, halvesInput } from '../../src/parts/halves/halves.ts';
import { checkText } from '../faults/check-text.ts';
import { foundIn, moldOfText } from './mold-of-text.ts';

const kernel = await loadKernel();
const head = `process: rubber
disc: { diameter: 160, thickness: 20 }
sprue: { hole: 20, draft: 3, well: { diameter: 30, depth: 7 }, dome: { diameter: 12, height: 3 }, fillet: 1, grip: 0 }
parting: { surface: flat }
masters: { tile: { length: 12, width: 12, above: 2, below: 3 } }
placements:
  - { id: one, master: tile, at: { radius: 50, angle: 0 } }
registration: { bosses: [{ id: nut, kind: cap nut, size: M6, at: { radius: 60, angle: 90 } }] }
`;
const at = (x: number, y: number, more = 'half: upper') =>
  `ventPins:\n  - { diameter: 1.5, at: { x: ${x}, y: ${y} }, ${more} }\n`;

const moldOf = (text: string) => moldOfText(`${head}${text}`);
const said = (text: string) => foundIn(`${head}${text}`, /^(pins|plan)\./);

const volumeOf = (mold: Awaited<ReturnType<typeof moldOf>>, half: string): number => {
  const found = halfSolids(halvesInput(mold), { kernel }).solids?.find(({ id }) => id === half);
  if (!found) throw new Error(`no ${half}`);
  return measureMesh(found.mesh).volume;
};

describe('a vent pin', () => {
  test('is as deep as the rubber over its cavity, in both halves', async () => {
    expect((await moldOf(at(50, 2))).ventPins).toMatchObject([{ x: 50, y: 2, depth: expect.closeTo(18, 5) }]);
    expect((await moldOf(at(50, 2, 'half: lower'))).ventPins).toMatchObject([
      { depth: expect.closeTo(17, 5) },
    ]);
  });
  test('takes a round rod out of its half and nothing out of the other', async () => {
    const [without, pinned] = [await moldOf(''), await moldOf(at(50, 2))];
    const rod = (Math.PI / 4) * 1.5 ** 2 * 18;
    const taken = volumeOf(without, 'upper-half') - volumeOf(pinned, 'upper-half');
    // The rod has chords of 0.02 mm.
    expect(taken / rod).toBeGreaterThan(0.96);
    expect(taken / rod).toBeLessThan(1.001);
    expect(volumeOf(pinned, 'lower-half')).toBe(volumeOf(without, 'lower-half'));
    const densities = { half: 1000, alloy: 7000, fixture: 1000 };
    const [before, after] = [without, pinned].map((mold) =>
      fittings(mold, densities, true).reduce((sum, { massG }) => sum + massG, 0),
    );
    expect(before - after).toBeCloseTo(rod * 1e-3, 9);
  });
  test('stands at a place of its master, which turns with it', async () => {
    const turned = head
      .replace('angle: 0 }', 'angle: 90 }, turn: 90')
      .replace('angle: 90 } }]', 'angle: 0 } }]');
    const mold = await moldOfText(
      `${turned}ventPins:\n  - { diameter: 1.5, placements: one, place: { x: 3, y: 1 }, half: upper }\n`,
    );
    // Its +x points outward, along y of the disc, and is turned by a quarter on to -x.
    expect(mold.ventPins[0].x).toBeCloseTo(-3, 6);
    expect(mold.ventPins[0].y).toBeCloseTo(50 - 1, 6);
  });
  test.each([
    ['over no cavity', at(20, 30), 'pins.hits-nothing warn pin-1 10:5'],
    ['through a boss', at(0, 60), 'pins.through stop pin-1 10:5'],
    ['beside a boss', at(0, 52), 'pins.near warn pin-1 10:5'],
    ['at the rim', at(-78, 0), 'pins.rim stop pin-1 10:5'],
    ['outside the disc', at(-90, 0), 'pins.rim stop pin-1 10:5'],
    ['in the well', at(10, 0), 'pins.through stop pin-1 10:5'],
    [
      'for a placement that is not there',
      'ventPins:\n  - { diameter: 1, placements: onne, half: upper }\n',
      'plan.unknown-id stop ventPins#1.placements 10:32',
    ],
    [
      'that does not say where',
      'ventPins:\n  - { diameter: 1, half: upper }\n',
      'plan.missing stop ventPins#1 10:5',
    ],
    [
      'that says where twice',
      at(50, 0, 'half: upper, placements: one'),
      'plan.choose-one stop ventPins#1.placements 10:56',
    ],
  ])('%s is told at its line', async (_, text, expected) => {
    expect(await said(text)).toContain(expected);
  });
  test('through the half that its cavity does not lie in', async () => {
    const sunk = head.replace('angle: 0 }', 'angle: 0 }, sink: 8');
    const { findings } = await checkText(`${sunk}${at(50, 2)}`, 'plan.yaml');
    const found = findings.find(({ code }) => code === 'pins.wrong-half');
    expect(found).toMatchObject({ subject: 'pin-1', severity: 'warn', at: { line: 10 } });
    const lower = await checkText(`${sunk}${at(50, 2, 'half: lower')}`, 'plan.yaml');
    expect(lower.findings.map(({ code }) => code)).not.toContain('pins.wrong-half');
  });
});

test('an upright line through a box lies in it from its floor to its top, and beside it nowhere', () => {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((k) => [k & 1, (k >> 1) & 1, k >> 2]);
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const box = {
    positions: Float32Array.from(corners),
    triangles: Uint32Array.from(quads.flatMap(([a, b, c, d]) => [a, b, c, a, c, d])),
  };
  expect(columnIn(box, 0.5, 0.5)).toEqual([[0, expect.closeTo(1, 9)]]);
  expect(columnIn(box, 1.5, 0.5)).toEqual([]);
});
