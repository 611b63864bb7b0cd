import { describe, expect, test } from 'vitest';
import { shotInput } from '../../src/checks/turning/shot-input.ts';
import { forecastCavity } from '../../src/fill/cavity.ts';
import { cavityOf, conditionsOf } from '../../src/fill/of-mold.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { measureMesh } from '../../src/mesh/index.ts';
import {
  type Channel,
  channelMesh,
  channelVolume,
  type Memoize,
  openRun,
  resolveLayout,
  runLength,
} from '../../src/mold/index.ts';
import { knifeStencil } from '../../src/parts/flat/knife-stencil.ts';
import { readPlan } from '../../src/plan/index.ts';
import { checkText } from '../faults/check-text.ts';
import { foundIn, moldOfText } from './mold-of-text.ts';

const kernel = await loadKernel();

const head = `process: rubber
disc: { diameter: 160, thickness: 20 }
sprue: { hole: 20, draft: 3, well: { diameter: 30, depth: 7 }, dome: { diameter: 12, height: 3 }, fillet: 1, grip: 0 }
parting: { surface: flat }
alloy: { name: lead-free pewter, density: 7300 kg/m3, pour: 285, liquidus: 255 }
spin: { speed: 480 }
masters: { tile: { length: 12, width: 12, above: 2, below: 2 } }
placements:
  - { id: one, master: tile, at: { radius: 50, angle: 30 } }
  - { id: two, master: tile, at: { radius: 50, angle: 150 } }
`;
const ring = 'runners:\n  - { id: main, ring: { radius: 30, spokes: 2, start: 90 }, width: 4, depth: 2 }\n';
const fed = 'gates:\n  - { placements: [one, two], from: main }\n';

const moldOf = (text: string) => moldOfText(`${head}${text}`);
const said = (text: string) => foundIn(`${head}${text}`, /^(channels|walls|plan|layout)\./);

const named = (channels: readonly Channel[], wanted: string): Channel => {
  const found = channels.find(({ id }) => id === wanted);
  if (!found) throw new Error(`no ${wanted}`);
  return found;
};

describe('a ring runner', () => {
  // Pappus: area of the section times the way of its centroid; half an ellipse 4 wide and 2 deep is pi 4 2 / 4.
  const pappus = 2 * Math.PI * 30 * ((Math.PI * 4 * 2) / 4);
  test('holds what Pappus says, and its mesh is closed round', async () => {
    const mold = await moldOf(ring + fed);
    const main = named(mold.channels, 'runner-main');
    expect(channelVolume(main)).toBeGreaterThan(0.998 * pappus);
    expect(channelVolume(main)).toBeLessThan(pappus);
    // A V has no chords of its own: 4 wide and 2 deep it is 4 mm2.
    const mesh = channelMesh({ ...main, section: { kind: 'V' } }, mold.parting, 0);
    if (!mesh) throw new Error('no mesh');
    const { volume } = measureMesh(mesh);
    expect(volume / (2 * Math.PI * 30 * 4)).toBeGreaterThan(0.998);
    expect(volume / (2 * Math.PI * 30 * 4)).toBeLessThan(1);
    const open = new Map<string, number>();
    for (let i = 0; i < mesh.triangles.length; i += 3)
      for (let k = 0; k < 3; k++) {
        const [a, b] = [mesh.triangles[i + k], mesh.triangles[i + ((k + 1) % 3)]];
        const edge = a < b ? `${a} ${b}` : `${b} ${a}`;
        open.set(edge, (open.get(edge) ?? 0) + (a < b ? 1 : -1));
      }
    expect([...open.values()].every((count) => count === 0)).toBe(true);
  });
  test('is fed by its spokes, feeds its gates, and all of it is counted in the shot', async () => {
    const { channels, ...rest } = await moldOf(ring + fed);
    expect(channels.map(({ id, opensInto }) => `${id} ${opensInto}`)).toEqual([
      'runner-main undefined',
      'runner-main-spoke runner-main',
      'runner-main-spoke-2 runner-main',
      'gate-one runner-main',
      'gate-two runner-main',
    ]);
    // Spokes from 15 to the ring's inner edge at 28; gates from its outer edge at 32 to the cavity at 44.
    expect(runLength(openRun(named(channels, 'runner-main-spoke')))).toBeCloseTo(13, 6);
    expect(runLength(openRun(named(channels, 'gate-one')))).toBeCloseTo(12, 1);
    const gates = shotInput({ ...rest, channels }).gates.reduce((sum, { volume }) => sum + volume, 0);
    const spokes = 2 * 13 * ((Math.PI * 4 * 2) / 4);
    expect(gates).toBeCloseTo(pappus + spokes + 2 * 12 * ((Math.PI * 3 * 1.5) / 4), -1);
  });
  test('a cavity that it feeds is forecast as one that metal comes into', async () => {
    const mold = await moldOf(ring + fed);
    const conditions = conditionsOf(mold);
    if (!conditions) throw new Error('no conditions');
    const { problem } = cavityOf(mold, mold.placements[0], conditions);
    expect(problem.channels.map(({ kind }) => kind)).toEqual(['gate']);
    const straight = await moldOf('gates:\n  - { placements: all }\n');
    const usual = cavityOf(straight, straight.placements[0], conditions).problem;
    const [here, there] = [
      forecastCavity({ ...problem, cell: 0.8 }),
      forecastCavity({ ...usual, cell: 0.8 }),
    ];
    expect(here?.gates).toHaveLength(1);
    expect(here?.places.map(({ volumes }) => volumes)).toEqual(there?.places.map(({ volumes }) => volumes));
  });
  test('leaves the stencil in one piece: three bridges, clear of what meets it', async () => {
    const mold = await moldOf(ring + fed);
    const [unit] = knifeStencil.units(mold);
    const { drawings = [] } = unit.run({ kernel });
    const cut = drawings[0].marks.find(({ layer }) => layer === 'cut')?.outline ?? [];
    // Rim, and the ring in three pieces, each joined with what meets it.
    expect(cut).toHaveLength(4);
  });
  test.each([
    ['off the rim', ring.replace('radius: 30', 'radius: 78'), 'channels.past-rim stop runner-main 12:5'],
    ['over the well', ring.replace('radius: 30', 'radius: 16'), 'channels.over-well stop runner-main 12:5'],
    [
      'through cavities',
      ring.replace('radius: 30', 'radius: 50'),
      'channels.in-cavity stop runner-main 12:5',
    ],
  ])('%s is told at its line', async (_, runners, expected) => {
    expect(
      await said(`${runners}gates:\n  - { placements: [one, two], entry: outer, from: main }\n`),
    ).toContain(expected);
  });
  test('through a boss', async () => {
    const bosses =
      'registration: { bosses: [{ id: nut, kind: cap nut, size: M6, at: { radius: 31, angle: 270 } }] }\n';
    expect(await said(ring + fed + bosses)).toContain('channels.through stop runner-main 12:5');
  });
  test('that feeds nothing, and a gate from a runner that is not there', async () => {
    expect(await said(`${ring}gates:\n  - { placements: [one, two] }\n`)).toContain(
      'channels.feeds-nothing warn runner-main 12:5',
    );
    expect(await said(`${ring}gates:\n  - { placements: one, from: mian }\n`)).toEqual([
      'plan.unknown-id stop gates#1.from 14:30',
    ]);
  });
  test('a name that is already a placement, an end of a ring, and none at all', async () => {
    expect(await said('runners: [{ id: one, ring: { radius: 30 } }]\n')).toEqual([
      'plan.duplicate-id stop runners#1.id 11:17',
    ]);
    expect(await said('runners: [{ id: main, ring: { radius: 30 }, path: straight }]\n')).toEqual([
      'plan.choose-one stop runners#1.path 11:45',
    ]);
    expect(await said('runners: [{ id: main }]\n')).toEqual(['plan.missing stop runners#1 11:11']);
    expect(await said('runners: [{ id: main, to: { radius: 40, angle: 0 }, path: {} }]\n')).toEqual([
      'plan.missing stop runners#1.path 11:53',
    ]);
  });
});

describe('a runner outward', () => {
  const arm = (more = '') => `runners:\n  - { id: arm, to: { radius: 50, angle: 0 }${more} }\n`;
  test('straight, on an arc and through way points, as long as it is drawn', async () => {
    const lengthOf = async (more: string) => {
      const { channels } = await moldOf(
        `${arm(more)}gates: [{ placements: one, entry: right, from: arm }]\n`,
      );
      return runLength(openRun(named(channels, 'runner-arm')));
    };
    expect(await lengthOf('')).toBeCloseTo(35, 6);
    // An arc over a chord c that turns by t is c (t / 2) / sin(t / 2) long; its lap of 2.5 mm is left out.
    expect(await lengthOf(', path: { arc: 60 }')).toBeCloseTo((37.5 * (Math.PI / 6)) / 0.5 - 2.5, 1);
    const bent = await lengthOf(', path: { through: [{ radius: 30, angle: -20 }] }');
    expect(bent).toBeGreaterThan(36);
    expect(bent).toBeLessThan(40);
  });
  test('a gate that could reach it only across the well is not cut', async () => {
    expect(await said(`${arm()}gates:\n  - { placements: one, entry: right, from: arm }\n`)).toEqual([]);
    expect(
      await said(`${arm(', width: 4')}gates:\n  - { placements: [one, two], entry: right, from: arm }\n`),
    ).toContain('channels.out-of-reach warn gate-two 14:5');
  });
  test('a way point outside the disc, and too tight a bend', async () => {
    const gate = 'gates: [{ placements: one, entry: right, from: arm }]\n';
    expect(await said(arm(', path: { through: [{ radius: 90, angle: 0 }] }') + gate)).toContain(
      'channels.way-outside stop runner-arm 12:5',
    );
    expect(
      await said(arm(', path: { through: [{ radius: 30, angle: 0 }, { radius: 30, angle: 6 }] }') + gate),
    ).toContain('channels.tight warn runner-arm 12:5');
  });
});

describe('a slowing bend', () => {
  const bend = (more: string) =>
    `gates:\n  - { placements: one, path: { through: [${more}] }, slow: { pocket: 4 } }\n`;
  test('runs on past its turn as far as the plan says, and is counted in the shot', async () => {
    const mold = await moldOf(bend('{ radius: 38, angle: -18 }'));
    const pocket = named(mold.channels, 'gate-one-pocket');
    const gate = named(mold.channels, 'gate-one');
    const [begin, end] = pocket.run.map(({ at }) => at);
    const angle = (12 * Math.PI) / 180;
    const turn = [38 * Math.cos(angle), 38 * Math.sin(angle)];
    expect(Math.hypot(end[0] - turn[0], end[1] - turn[1])).toBeCloseTo(4, 6);
    // On along the way that metal comes by: outward along the radius.
    expect(Math.atan2(end[1] - begin[1], end[0] - begin[0])).toBeCloseTo(angle, 6);
    // Past the outer side of a bend it is at most as long as it runs on, and less by half the width at most.
    expect(runLength(openRun(pocket))).toBeLessThan(4 + 1e-6);
    expect(runLength(openRun(pocket))).toBeGreaterThan(2.5 - 1e-6);
    expect(shotInput(mold).gates.map(({ volume }) => volume)).toEqual([
      channelVolume(gate),
      channelVolume(pocket),
    ]);
    expect(channelVolume(pocket)).toBeCloseTo((runLength(openRun(pocket)) * Math.PI * 3 * 1.5) / 4, 6);
  });
  test('one that hardly turns, one on to the rim, one without a way point', async () => {
    expect(await said(bend('{ radius: 38, angle: -18 }'))).toEqual([]);
    expect(await said(bend('{ radius: 30, angle: -8 }'))).toEqual([
      'channels.no-turn warn gate-one-pocket 12:5',
    ]);
    const far = bend('{ radius: 60, angle: -30 }')
      .replace('pocket: 4', 'pocket: 17')
      .replace('path', 'entry: right, path');
    expect(await said(far)).toContain('channels.past-rim stop gate-one-pocket 12:5');
    expect(await said('gates:\n  - { placements: one, slow: { pocket: 4 } }\n')).toEqual([
      'plan.missing stop gates#1.slow 12:30',
    ]);
  });
});

describe('split gates', () => {
  test('one part fed at two places, from the well and out of its own gate', async () => {
    const twice = 'gates:\n  - { placements: one, entry: left, path: routed }\n';
    expect(await said(`${twice}  - { placements: one, entry: right, path: routed }\n`)).toEqual([]);
    expect(await said(`${twice}  - { placements: one, entry: right, from: one, path: routed }\n`)).toEqual(
      [],
    );
    const { channels } = await moldOf(
      `${twice}  - { placements: one, entry: right, from: one, path: routed }\n`,
    );
    expect(channels.map(({ id, opensInto }) => [id, opensInto])).toEqual([
      ['gate-one', undefined],
      ['gate-one-2', 'gate-one'],
    ]);
  });
  test('two parts from one stem', async () => {
    const beside = '  - { id: three, master: tile, at: { radius: 50, angle: 60 } }\n';
    expect(
      await said(`${beside}gates:\n  - { placements: one }\n  - { placements: three, from: one }\n`),
    ).toEqual([]);
  });
});

test('a knife-thin web between gates that leave the well side by side', async () => {
  const gates = (angle: number) =>
    `  - { id: three, master: tile, at: { radius: 50, angle: ${angle} } }\ngates:\n  - { placements: [one, three] }\n`;
  // Radii at 15 degrees, strips of 3 mm: at the well's edge of 15 mm a web of 15 (2 sin 7.5 deg) - 3 cos 7.5 deg = 0.94 mm.
  const { findings } = await checkText(`${head}${gates(45)}`, 'plan.yaml');
  const [web] = findings.filter(({ code }) => code === 'channels.web');
  expect(web).toMatchObject({ subject: 'gate-one', at: { line: 13 } });
  const half = (7.5 * Math.PI) / 180;
  expect(web.values.measured).toBeCloseTo(2 * (15 * Math.sin(half) - 1.5 * Math.cos(half)), 1);
  expect(await said(gates(50))).toEqual([]);
});

test('a way is looked for once, and again only where something stands in another place', async () => {
  const text = (angle: number) =>
    `${head}  - { id: three, master: tile, at: { radius: 27, angle: ${angle} } }\ngates:\n  - { placements: one, path: routed }\n`;
  const kept = new Map<string, unknown>();
  const searched: string[] = [];
  const memoize: Memoize = (what, input, make) => {
    const key = JSON.stringify([what, input]);
    if (what === 'routed way' && !kept.has(key)) searched.push(what);
    if (!kept.has(key)) kept.set(key, make());
    return kept.get(key) as ReturnType<typeof make>;
  };
  const { masters } = await moldOf('');
  const layOut = (angle: number) => {
    const { plan } = readPlan(text(angle), 'plan.yaml');
    if (!plan) throw new Error('no plan');
    return resolveLayout(plan, masters, memoize).mold.channels;
  };
  const first = layOut(30);
  expect(layOut(30)).toEqual(first);
  expect(searched).toHaveLength(1);
  expect(layOut(34)).not.toEqual(first);
  expect(searched).toHaveLength(2);
});
