import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { type Build, exportSolid } from '../../src/export/index.ts';
import { placeOnBeds } from '../../src/export/three-mf/beds.ts';
import { threeMfFiles } from '../../src/export/three-mf.ts';
import { joinReport } from '../../src/findings/index.ts';
import { readMesh } from '../../src/mesh/index.ts';
import type { Solid } from '../../src/mold/index.ts';
import { judge3mf } from '../judge-3mf.ts';
import { exampleMold } from '../parts/example-mold.ts';
import { schemaFaults } from '../published/three-mf/validate-model.ts';
import { box, insideOut, openBox, solidOf, torus } from './shapes.ts';
import { facts3mf } from './three-mf-rules.ts';

const bed = { x: 100, y: 80, z: 200, joint: 0.25, margin: 3 };

async function buildOf(solids: readonly Solid[], title = 'Leaves & "seed" <heads>'): Promise<Build> {
  const mold = exampleMold({ title });
  return {
    mold: { ...mold, fixture: { ...mold.fixture, bed } },
    planHash: '',
    version: '0',
    solids: await Promise.all(solids.map(exportSolid)),
    drawings: [],
    withheld: [],
    report: joinReport(title, 'metric', []),
  };
}

const solids = [
  solidOf('lower-half', box([60, 50, 12], [-30, -25, 0]), { title: 'lower half <A>' }),
  solidOf('upper-half', box([60, 50, 12], [-30, -25, 0])),
  solidOf('ring', torus(20, 5.1, 64, 32), { role: 'plug' }),
  solidOf('tab', box([18, 8, 3], [0.1, 0.2, 0.3]), { role: 'tab' }),
];

const bytesOf = async (some: readonly Solid[]): Promise<Uint8Array> =>
  threeMfFiles(await buildOf(some))[0].bytes;

describe('3MF of a build', () => {
  test('lib3mf, the publishers’ own reader, takes it in strict mode: every object manifold and oriented', async () => {
    const judged = await judge3mf(await bytesOf(solids));
    expect(judged.warnings).toBe(0);
    expect(judged.partNumbers).toEqual(['lower-half', 'upper-half', 'ring', 'tab']);
    expect(judged.objects.map(({ name }) => name)).toEqual(['lower half <A>', 'upper-half', 'ring', 'tab']);
    expect(judged.objects.map(({ triangles }) => triangles)).toEqual([12, 12, 4096, 12]);
    expect(judged.objects.every(({ manifoldAndOriented }) => manifoldAndOriented)).toBe(true);
  });

  test('follows the rules of the core specification, element by element', async () => {
    const facts = facts3mf(await bytesOf(solids));
    expect(facts.faults).toEqual([]);
    expect(facts.unit).toBe('millimeter');
    expect(facts.colors).toEqual(['#9AA58C', '#9AA58C', '#8C5A7A', '#A8443A']);
    expect(facts.volumes[0]).toBeCloseTo(60 * 50 * 12, 6);
  });

  test('the rules find an open, an inside-out and a mirrored object', async () => {
    // Written without the audit, as the program never does.
    const rough = async (mesh: Solid['mesh']): Promise<Uint8Array> => {
      const build = await buildOf([solidOf('a', box([1, 1, 1]))]);
      return threeMfFiles({ ...build, solids: [{ ...build.solids[0], solid: solidOf('a', mesh) }] })[0].bytes;
    };
    expect(facts3mf(await rough(openBox())).faults).toEqual(['object 2: 3 edges without exactly two faces']);
    expect(facts3mf(await rough(insideOut(box([1, 2, 3])))).faults).toEqual(['object 2: volume -6']);
    const mirrored = (text: string): string => text.replace('transform="1 0 0', 'transform="-1 0 0');
    expect(facts3mf(await bytesOf([solids[0]]), mirrored).faults).toContain(
      'item 0: the transform mirrors or flattens',
    );
    expect((await judge3mf(await rough(openBox()))).objects[0].manifoldAndOriented).toBe(false);
  });

  test('our reader finds the same float32 corners and faces again', async () => {
    const read = readMesh(await bytesOf([solids[2]]), 'ring.3mf');
    if (!read.mesh) throw new Error('not read');
    expect(read.mesh.triangles).toEqual(solids[2].mesh.triangles);
    const { positions } = read.mesh;
    const [from, to] = [solids[2].mesh.positions, positions];
    const shift = [0, 1, 2].map((axis) => to[axis] - from[axis]);
    expect(from.every((value, i) => Math.abs(to[i] - value - shift[i % 3]) < 1e-5)).toBe(true);
  });

  test('its model part is valid by the schema', async () => {
    const model = strFromU8(unzipSync(await bytesOf(solids))['3D/3dmodel.model']);
    expect(schemaFaults(model)).toEqual([]);
  });

  test('what is only to look at is not in it', async () => {
    const left = solidOf('left', box([1, 1, 1]), { role: 'left by the cutter' });
    const judged = await judge3mf(await bytesOf([left, solids[3]]));
    expect(judged.partNumbers).toEqual(['tab']);
    expect(threeMfFiles(await buildOf([left]))).toEqual([]);
  });

  test('same build, same bytes; no file where there is no solid', async () => {
    expect(await bytesOf(solids)).toEqual(await bytesOf(solids));
    expect(threeMfFiles(await buildOf([]))).toEqual([]);
    expect(Object.keys(unzipSync(await bytesOf(solids)))).toEqual([
      '[Content_Types].xml',
      '_rels/.rels',
      '3D/3dmodel.model',
    ]);
  });
});

describe('beds', () => {
  test('pieces keep the margin from each other and from the edges, in as many beds as it takes', () => {
    const pieces = [...Array(23).keys()].map((i) => ({ x: 7 + ((i * 13) % 31), y: 5 + ((i * 7) % 23) }));
    const places = placeOnBeds(pieces, bed, 3);
    for (const [i, a] of places.entries()) {
      expect(Math.min(a.x, a.y)).toBeGreaterThanOrEqual(3);
      expect(a.x + pieces[i].x).toBeLessThanOrEqual(bed.x - 3);
      expect(a.y + pieces[i].y).toBeLessThanOrEqual(bed.y - 3);
      for (const [j, b] of places.slice(0, i).entries()) {
        const gapX = Math.max(a.x - b.x - pieces[j].x, b.x - a.x - pieces[i].x);
        const gapY = Math.max(a.y - b.y - pieces[j].y, b.y - a.y - pieces[i].y);
        expect(a.bed !== b.bed || Math.max(gapX, gapY) >= 3).toBe(true);
      }
    }
    expect(Math.max(...places.map((place) => place.bed))).toBeGreaterThan(0);
  });

  test('a piece larger than the bed has one to itself', () => {
    const places = placeOnBeds(
      [
        { x: 10, y: 10 },
        { x: 300, y: 90 },
      ],
      bed,
      3,
    );
    expect(places.map((place) => place.bed)).toEqual([1, 0]);
  });
});
