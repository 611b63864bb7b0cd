import { describe, expect, it } from 'vitest';
import { cellsOf, isTooFine, volumeOf } from '../../src/fill/cells.ts';
import type { Conditions, Pocket } from '../../src/fill/conditions.ts';
import { emptyRoom } from '../../src/fill/empty-room.ts';
import { airLeft, fillRoom, forecastRoom } from '../../src/fill/forecast.ts';
import { moveMesh, type TriangleMesh } from '../../src/geometry/index.ts';
import { single } from '../revolved-solids.ts';
import { type Box, cut, portIn, roomOf, turning } from './shapes.ts';

/** A bar with a leg toward the axis, and a narrow leg outward. */
const parts: Box[] = [
  [
    [60, -2.5, -2.5],
    [85, 2.5, 2.5],
  ],
  [
    [75, -2.5, -2.5],
    [80, 9, 2.5],
  ],
  [
    [64, 6, -2.5],
    [80, 9, 2.5],
  ],
  [
    [84, -0.8, -0.8],
    [92, 0.8, 0.8],
  ],
];
const gateBox: Box = [
  [59, -1.5, -2.6],
  [60.6, 1.5, 2.6],
];
const rule = { bond: 2.3, angle: 145 };

function left(mesh: TriangleMesh, turn = 0, conditions: Conditions = turning, bond = rule.bond): Pocket[] {
  const cells = cut(mesh, 0.25);
  const room = fillRoom(emptyRoom(cells, conditions), [portIn(cells, 'gate', gateBox, turn)]);
  return airLeft(room, { ...rule, bond });
}

const shares = (pockets: readonly Pocket[]): number[] => pockets.map(({ shutIn }) => shutIn / 1100);

/** Each face cut in four through the middles of its sides. */
function refined({ positions: p, triangles }: TriangleMesh): TriangleMesh {
  const out: number[] = [];
  const at = (v: number) => [p[3 * v], p[3 * v + 1], p[3 * v + 2]];
  const middle = (a: readonly number[], b: readonly number[]) => a.map((value, x) => (value + b[x]) / 2);
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [at(triangles[t]), at(triangles[t + 1]), at(triangles[t + 2])];
    const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)];
    for (const corner of [a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca]) out.push(...corner);
  }
  return single({
    positions: Float64Array.from(out),
    triangles: Uint32Array.from({ length: out.length / 3 }, (_, i) => i),
  });
}

describe('what must not change the forecast', () => {
  const mesh = roomOf(parts);
  const plain = left(mesh);

  it('finds the leg toward the axis and the narrow one', () => {
    expect(plain.map(({ where }) => where).sort()).toEqual(['leg', 'room']);
  });

  it('knows how wide the narrow one is, and lets metal and air pass in a blade 1 mm thick and 4 mm wide', () => {
    const leg = plain.find(({ where }) => where === 'leg');
    expect(leg?.clear?.map((width) => Math.round(width * 10) / 10)).toEqual([1.6, 1.6]);
    const blade = left(
      roomOf([
        parts[0],
        [
          [84, -0.5, -2],
          [92, 0.5, 2],
        ],
      ]),
    );
    expect(blade).toEqual([]);
    const thin = left(
      roomOf([
        parts[0],
        [
          [84, -0.5, -0.5],
          [92, 0.5, 0.5],
        ],
      ]),
    );
    expect(thin.map(({ where, sealedBy }) => [where, sealedBy])).toEqual([['leg', 'neck']]);
  });

  it('turned about the axis, by at most a point of the whole', () => {
    for (const turn of [30, 77, 180]) {
      const found = left(roomOf(parts, turn), turn);
      expect(found.length).toBe(plain.length);
      for (const [k, share] of shares(found).entries())
        expect(Math.abs(share - shares(plain)[k])).toBeLessThan(0.01);
    }
  });

  it('mirrored, with the turning reversed, which a liquid at rest does not feel', () => {
    const mirror = moveMesh(mesh, [1, 0, 0, 0, 0, -1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1]);
    const back = { ...turning, field: { ...turning.field, speedRpm: -turning.field.speedRpm } };
    const found = left(mirror, 0, back);
    expect(found.length).toBe(plain.length);
    for (const [k, share] of shares(found).entries())
      expect(Math.abs(share - shares(plain)[k])).toBeLessThan(0.002);
  });

  it('faces cut in four: the same cells', () => {
    expect(left(refined(mesh))).toEqual(plain);
  });

  it('without gravity, at twice the speed and four times the Bond number: the same pockets, less pressed together', () => {
    const at = (times: number) => ({
      ...turning,
      field: { speedRpm: times * turning.field.speedRpm, gravity: 0 },
    });
    // Both well inside the range, so that neither limit is cut off at its end.
    const [slow, fast] = [left(mesh, 0, at(1), 0.5), left(mesh, 0, at(2), 2)];
    expect(fast.map(({ cells }) => cells)).toEqual(slow.map(({ cells }) => cells));
    for (const [k, { volume }] of fast.entries()) expect(volume).toBeLessThan(slow[k].volume);
  });
});

describe('a leak at the parting line', () => {
  const legs: Box[] = [
    [
      [60, -5, -1.5],
      [74, -2, 1.5],
    ],
    [
      [63, 2, -1.5],
      [74, 5, 1.5],
    ],
    [
      [71, -5, -1.5],
      [74, 5, 1.5],
    ],
  ];
  const cells = cut(roomOf(legs), 0.25);
  const gate = portIn(cells, 'gate', [
    [0, -9, -9],
    [60.5, 9, 9],
  ]);
  const under = (superheatS: number, gap: number) =>
    forecastRoom(emptyRoom(cells, { ...turning, superheatS, leak: { gap, land: 20 } }), [gate]).places;

  it('lets a pocket out where its air passes before the metal is cold, and so it stays in some of the range', () => {
    // About 70 mm3 through a parting line of some 15 mm round the tip, 20 mm deep, under 26 kPa: 0.1 mm^3 a second at 1 um,
    // a thousand times that at 10 um.
    expect(under(0.4, 0.001).map(({ stays }) => stays)).toEqual(['all']);
    expect(
      under(4, 0.01).map(({ stays, volumes }) => [stays, volumes.filter((one) => one === 0).length]),
    ).toEqual([['some', 1]]);
  });

  it('tells how long a bubble takes to the gate and the metal stays hot: 0.23 sqrt(a w), and the square of the half width', () => {
    const [{ riseS, superheatS }] = under(0.4, 0.001);
    expect(superheatS).toBeCloseTo(0.4 * 1.5 ** 2, 0);
    // From (63, 3.5) to the gate at (60.2, -3.5), 3 mm wide at 126 m/s2.
    expect(riseS).toBeCloseTo((Math.hypot(2.8, 7) * 1e-3) / (0.23 * Math.sqrt(126 * 3e-3)), 1);
  });
});

describe('cells', () => {
  it('hold the volume of a box exactly along z, and within a row across', () => {
    const cells = cut(
      roomOf([
        [
          [60, -1.5, -1.05],
          [85, 1.5, 1.17],
        ],
      ]),
      0.3,
    );
    expect(
      volumeOf(
        cells,
        Array.from({ length: cells.count }, (_, c) => c),
      ),
    ).toBeCloseTo(83 * 0.3 * 10 * 0.3 * 2.22, 3);
  });

  it('say which edge would fit where they are too many', () => {
    const mesh = roomOf([
      [
        [0, 0, 0],
        [100, 100, 100],
      ],
    ]);
    const found = cellsOf(mesh, 0.1);
    if (!isTooFine(found)) throw new Error('a thousand million cells');
    expect(found.wouldFit).toBeGreaterThan(0.6);
    expect(
      isTooFine(
        cellsOf(
          roomOf([
            [
              [0, 0, 0],
              [10, 10, 10],
            ],
          ]),
          0.01,
        ),
      ),
    ).toBe(true);
  });
});
