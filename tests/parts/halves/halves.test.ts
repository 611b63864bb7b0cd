import { beforeAll, expect, test } from 'vitest';
import { boundsOf } from '../../../src/geometry/index.ts';
import { KernelFault, loadKernel } from '../../../src/kernel/index.ts';
import type { Boss, Mold, Solid, Tools } from '../../../src/mold/index.ts';
import { halves } from '../../../src/parts/halves/halves.ts';
import { straightChannel } from '../../straight-channel.ts';
import { ball, masterOf, place, ring } from '../example-masters.ts';
import {
  exampleBoss,
  exampleMold,
  frustum,
  polygonShare,
  shareAt,
  solidsOf,
  volumeOf,
} from '../example-mold.ts';
import { notchArea } from '../notch-area.ts';
import { pairEdges } from '../pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

/** No sprue, no label: a disc with what the test puts in. The index marks' grooves take the same in every test. */
const bare = (changes: Partial<Mold> = {}): Mold => {
  const { sprue: _, ...mold } = exampleMold(changes);
  return { ...mold, disc: { ...mold.disc, label: '' } };
};

const build = (mold: Mold): Solid[] => solidsOf(halves, mold, tools);
const volumes = (mold: Mold): number[] => build(mold).map(({ mesh }) => volumeOf(mesh));
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

const beetle = (radius = 8) => masterOf('seed', ball(tools.kernel, radius));

test('both halves and their balls fill the disc', () => {
  const master = beetle();
  const placements = ring(master, 6, 45, { z: 1.5 });
  const [lower, upper] = volumes(bare({ masters: [master], placements }));
  const [emptyLower, emptyUpper] = volumes(bare());
  const filled = lower + upper + placements.length * volumeOf(master.mesh);
  expect(filled / (emptyLower + emptyUpper)).toBeCloseTo(1, 6);
});

test('each half lacks the part of the ball on its side: spherical caps', () => {
  const r = 8;
  const z = 1.5;
  const master = beetle(r);
  const [lower, upper] = volumes(bare({ masters: [master], placements: ring(master, 4, 45, { z }) }));
  const [emptyLower, emptyUpper] = volumes(bare());
  // Cap of height h: V = pi h^2 (3 R - h) / 3.
  const cap = (h: number): number => (Math.PI * h * h * (3 * r - h)) / 3;
  // 64 segments each way: under 0.5 % of a ball's volume is lost to the polygon.
  expect((emptyLower - lower) / (4 * cap(r - z))).toBeGreaterThan(0.99);
  expect((emptyLower - lower) / (4 * cap(r - z))).toBeLessThan(1);
  expect((emptyUpper - upper) / (4 * cap(r + z))).toBeGreaterThan(0.99);
  expect((emptyUpper - upper) / (4 * cap(r + z))).toBeLessThan(1);
});

test('an empty disc is its frusta less two grooves', () => {
  const { disc } = bare();
  const [lower] = volumes(bare());
  const solid =
    (Math.PI * disc.radius ** 2 * (disc.lower - 1) + frustum(disc.radius, disc.radius - 1, 1)) *
    shareAt(disc.radius);
  expect(solid - lower).toBeGreaterThan(1);
  expect(solid - lower).toBeLessThan(35);
});

test('turning every placement about the axis leaves the volumes', () => {
  const master = beetle();
  const shifted = [0, 0.3, 1].map((fromRad) =>
    volumes(bare({ masters: [master], placements: ring(master, 5, 45, { z: 2, fromRad }) })),
  );
  for (const [lower, upper] of shifted.slice(1)) {
    expect(lower / shifted[0][0]).toBeCloseTo(1, 6);
    expect(upper / shifted[0][1]).toBeCloseTo(1, 6);
  }
});

test('every half with cavities is one closed ball', () => {
  const master = beetle();
  for (const { mesh } of build(bare({ masters: [master], placements: ring(master, 8, 45, { z: 1 }) }))) {
    expect(pairEdges(mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  }
});

test('overlapping masters are united, not counted twice: a lens is shared', () => {
  const r = 8;
  const d = 10;
  const master = masterOf('seed', ball(tools.kernel, r, 96));
  const placements = [-1, 1].map((side, i) =>
    place(master, `seed-${i}`, { radius: Math.hypot(40, d / 2), angleRad: Math.atan2((side * d) / 2, 40) }),
  );
  const solids = build(bare({ masters: [master], placements }));
  const [emptyLower, emptyUpper] = volumes(bare());
  // Two balls of radius r at distance d share pi (4 r + d) (2 r - d)^2 / 12 (two caps of height r - d / 2).
  const lens = (Math.PI * (4 * r + d) * (2 * r - d) ** 2) / 12;
  const expected = 2 * volumeOf(master.mesh) - lens;
  const taken = emptyLower + emptyUpper - sum(solids.map(({ mesh }) => volumeOf(mesh)));
  expect(Math.abs(taken / expected - 1)).toBeLessThan(0.005);
  for (const { mesh } of solids) expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
});

test('a master through the rim and one through the outer face leave closed halves', () => {
  const master = beetle();
  const placements = [
    place(master, 'through-rim', { radius: 74, angleRad: 1 }),
    place(master, 'through-face', { radius: 40, angleRad: 3, z: 9 }),
  ];
  for (const { mesh } of build(bare({ masters: [master], placements }))) {
    expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
  }
});

test('a placement whose master swallows the disc is a fault that names the half', () => {
  const master = masterOf('giant', ball(tools.kernel, 200));
  const placements = [place(master, 'giant-1', { radius: 0, angleRad: 0 })];
  expect(() => build(bare({ masters: [master], placements }))).toThrow(KernelFault);
  expect(() => build(bare({ masters: [master], placements }))).toThrow(/half/);
});

test('a placement of a master that is not there is a fault that names the placement', () => {
  const placements = [place(beetle(), 'lost', { radius: 40, angleRad: 0 })];
  expect(() => build(bare({ placements }))).toThrow(/lost/);
});

const dome = (changes: Partial<Boss> = {}): Boss =>
  exampleBoss({ id: 'dome-a', kind: 'dome', rootDepth: 5, headHeight: 5, clearance: 0.2, ...changes });

test('a rigid dome is one with the lower half; its socket is larger by clearance and lead-in', () => {
  const [lower, upper] = volumes(bare({ bosses: [dome()] }));
  const [emptyLower, emptyUpper] = volumes(bare());
  const half = (r: number): number => (2 / 3) * Math.PI * r ** 3;
  expect((lower - emptyLower) / half(5)).toBeGreaterThan(0.985);
  expect((lower - emptyLower) / half(5)).toBeLessThan(1);
  const socket = emptyUpper - upper;
  expect(socket).toBeGreaterThan(half(5.2));
  // The 45 degree mouth is 0.6 mm wide: at most a ring of that triangle at the mouth (Pappus).
  expect(socket).toBeLessThan(half(5.2) * 1.005 + 0.5 * 0.6 * 0.6 * 2 * Math.PI * 5.6);
});

test('pocket and socket of a cap nut are wider by clearance and by what holes come out tighter', () => {
  const nut = dome({ kind: 'cap nut', acrossFlats: 13, rootDepth: 6.5, headRadius: 6, headHeight: 8 });
  const cut = (holeCompensation: number): number[] => {
    const fixture = { ...exampleMold().fixture, holeCompensation };
    const [lower, upper] = volumes(bare({ bosses: [nut], fixture }));
    const [emptyLower, emptyUpper] = volumes(bare({ fixture }));
    return [emptyLower - lower, emptyUpper - upper];
  };
  // Hexagon: A = (sqrt 3 / 2) s2.
  const hexagon = (across: number): number => (Math.sqrt(3) / 2) * across ** 2 * 6.5;
  const [plain, wide] = [cut(0), cut(0.3)];
  expect(plain[0] / hexagon(13 + 0.4)).toBeCloseTo(1, 4);
  expect(wide[0] / hexagon(13 + 0.4 + 0.3)).toBeCloseTo(1, 4);
  // The socket grows by 0.15 mm all round its axis: between the growth of its collar alone and that of a cylinder.
  const ring = (height: number, r: number): number => Math.PI * ((r + 0.15) ** 2 - r ** 2) * height;
  expect(wide[1] - plain[1]).toBeGreaterThan(ring(2, 6.2));
  expect(wide[1] - plain[1]).toBeLessThan(ring(8.2, 6.9));
});

test('a dome in rubber is a loose body that leaves its imprint in both halves', () => {
  const boss = dome({ clearance: 0 });
  const [lower, upper] = volumes(bare({ process: 'rubber', bosses: [boss] }));
  const [emptyLower, emptyUpper] = volumes(bare());
  const root = Math.PI * 25 * 5;
  expect((emptyLower - lower) / root).toBeGreaterThan(1);
  expect((emptyLower - lower) / root).toBeLessThan(1.005);
  expect((emptyUpper - upper) / ((2 / 3) * Math.PI * 125)).toBeCloseTo(1, 1);
});

test.each(['lower', 'upper'] as const)(
  'a half-round gate in the %s half takes half an ellipse by its length',
  (half) => {
    const gate = straightChannel({
      id: 'gate-1',
      kind: 'gate',
      placement: 'seed-1',
      from: [20, 0],
      to: [50, 0],
      width: 4,
      depth: 2,
      half,
    });
    const index = half === 'lower' ? 0 : 1;
    const taken = sum(volumes(bare())) - sum(volumes(bare({ channels: [gate] })));
    const own = volumes(bare())[index] - volumes(bare({ channels: [gate] }))[index];
    // The half ellipse (pi w d / 4) drawn with 8 chords is the 16-gon's share of it.
    expect(own / (((Math.PI * 4 * 2) / 4) * 30 * polygonShare(16))).toBeCloseTo(1, 4);
    expect(taken).toBeCloseTo(own, 2);
  },
);

test('a vent to the rim is a trapezoid', () => {
  const vent = straightChannel({
    id: 'vent-1',
    kind: 'vent',
    placement: 'seed-1',
    from: [50, 0],
    to: [80, 0],
    width: 3,
    depth: 0.5,
    half: 'upper',
  });
  const taken = volumes(bare())[1] - volumes(bare({ channels: [vent] }))[1];
  const flank = 0.5 * Math.tan(Math.PI / 9);
  const area = (3 - flank) * 0.5;
  // The rim is at 75 mm, a chord at most 3^2 / (8 * 75) mm short at the vent's sides.
  expect(Math.abs(taken - area * 25)).toBeLessThan(area * 0.02);
});

test('tab recess and notch: wedge and V prism with a round root in both halves', () => {
  const tabs = [{ id: 'tab-1', angleRad: 2, width: 12, length: 10, height: 4, inset: 1.5 }];
  const notches = [{ id: 'notch-1', angleRad: 4, width: 4, depth: 3 }];
  const mold = bare({ process: 'rubber' });
  const empty = sum(volumes(mold));
  const tab = empty - sum(volumes({ ...mold, tabs }));
  expect(tab).toBeCloseTo(12 * 10 * (4 + 1) * 0.5, 1);
  const notch = empty - sum(volumes({ ...mold, notches }));
  const { radius, lower, upper } = mold.disc;
  const prism = notchArea(notches[0], radius) * (lower + upper);
  // Past the prism the cutter takes the sliver between chord and rim, 2/3 of 4 mm by the sagitta; where the rim is
  // chamfered, 1 mm at 45 degrees on both outer edges, there was nothing to take.
  const sliver = (2 / 3) * 4 * (radius - Math.sqrt(radius ** 2 - 4)) * (lower + upper);
  const chamfers = 2 * 0.5 * 4;
  // Rim and root are drawn by chords up to 0.01 mm inside them.
  const chords = (4 + Math.PI * 0.75) * 0.01 * (lower + upper);
  expect(Math.abs(notch - (prism + sliver - chamfers))).toBeLessThan(chords);
});

test('relieved rigid halves: a ball sunk below its equator leaves by a cylinder over it', () => {
  const r = 8;
  const depth = 3;
  const master = masterOf('seed', ball(tools.kernel, r, 96));
  const placements = [place(master, 'seed-1', { radius: 40, angleRad: 0.4, z: -depth })];
  const fixture = { ...exampleMold().fixture, relieve: true };
  const relieved = build(bare({ masters: [master], placements, fixture }));
  const [emptyLower, emptyUpper] = volumes(bare());
  const [lower, upper] = relieved.map(({ mesh }) => volumeOf(mesh));
  // Half a ball and a cylinder from its equator up to the parting plane; the upper half keeps a plain cap.
  const expected = (2 / 3) * Math.PI * r ** 3 + Math.PI * r * r * depth;
  expect(Math.abs((emptyLower - lower) / expected - 1)).toBeLessThan(0.005);
  const h = r - depth;
  expect(Math.abs((emptyUpper - upper) / ((Math.PI * h * h * (3 * r - h)) / 3) - 1)).toBeLessThan(0.01);
  for (const { mesh } of relieved) expect(pairEdges(mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
});

test('printed on the outer face, parting face up', () => {
  const solids = build(exampleMold());
  for (const [i, { mesh, id }] of solids.entries()) {
    const { min, max } = boundsOf(mesh.positions);
    expect(min[2]).toBe(0);
    expect(max[2]).toBe(Math.fround([19.05, 12.7][i]));
    expect(id).toBe(['lower-half', 'upper-half'][i]);
  }
});
