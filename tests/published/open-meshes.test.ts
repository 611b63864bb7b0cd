// Meshes that others made, from packages of the registry. The figures beside them (triangles, open edges, volumes)
// were counted by edge pairing and the divergence theorem in a program that shares no code with this one.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Finding } from '../../src/findings/index.ts';
import { type Kernel, loadKernel } from '../../src/kernel/index.ts';
import { type FileUnit, type RawMesh, readMesh, repairMesh } from '../../src/mesh/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { shapeOf, unpairedEdges, volumeOf } from '../mesh/rough-shapes.ts';

const require = createRequire(import.meta.url);
const stlModels = dirname(require.resolve('stl-models/package.json'));
const nodeStl = join(dirname(require.resolve('node-stl/package.json')), 'test', 'test_data');

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const said = (findings: readonly Finding[]): string =>
  findings.map((one) => sayFinding(one, 'metric').says).join(' ');

function read(path: string): RawMesh {
  const { mesh, findings } = readMesh(readFileSync(path), path);
  if (!mesh) throw new Error(said(findings));
  return mesh;
}

const bring = (raw: RawMesh, unit?: FileUnit) => repairMesh(raw, { subject: 'master', unit }, kernel);

function closedVolume(outcome: ReturnType<typeof bring>): number {
  if (!outcome.mesh) throw new Error(said(outcome.findings));
  expect(unpairedEdges(outcome.mesh)).toBe(0);
  return volumeOf(shapeOf(outcome.mesh));
}

/** Edges of a soup with one face, told by the coordinates of their ends, and the middle of those ends. */
function openRims({ positions, triangles }: RawMesh): { edges: number; middle: [number, number, number] } {
  const at = (h: number): string => positions.subarray(triangles[h] * 3, triangles[h] * 3 + 3).join();
  const faces = new Map<string, number[]>();
  for (let h = 0; h < triangles.length; h++) {
    const ends = [at(h), at(h % 3 === 2 ? h - 2 : h + 1)];
    const key = ends.sort().join();
    faces.set(key, [...(faces.get(key) ?? []), h]);
  }
  const open = [...faces.values()].filter((list) => list.length === 1).map(([h]) => triangles[h] * 3);
  const mean = (axis: number): number => open.reduce((sum, v) => sum + positions[v + axis], 0) / open.length;
  return { edges: open.length, middle: [mean(0), mean(1), mean(2)] };
}

describe('closed meshes pass with their own faces, silently', () => {
  test('bunny 1.0.1: Stanford bunny, 3674 triangles, V 194.288372', () => {
    const { positions, cells } = require('bunny') as { positions: number[][]; cells: number[][] };
    const raw = {
      positions: Float64Array.from(positions.flat()),
      triangles: Uint32Array.from(cells.flat()),
    };
    const outcome = bring(raw, 'mm');
    expect(outcome.findings).toEqual([]);
    expect(outcome.mesh?.triangles).toEqual(raw.triangles);
    expect(closedVolume(outcome)).toBeCloseTo(194.288372, 4);
  });

  test.each([
    // The text files have more digits than float32 keeps: their volumes agree to 1e-7.
    ['stl-models gearwheel', join(stlModels, 'objects/gearwheel.bin.stl'), 2444, 8922.637, 3],
    ['stl-models gearwheel as text', join(stlModels, 'objects/gearwheel.ascii.stl'), 2444, 8922.637, 1],
    ['node-stl WALLY_1plate', join(nodeStl, 'WALLY_1plate.stl'), 382, 22863.823, 2],
    ['node-stl 002', join(nodeStl, '002.STL'), 40, 48625.1, 2],
    ['node-stl box of 2 x 3 x 4', join(nodeStl, 'box_2x3x4.stl'), 12, 24, 6],
  ] as const)('%s', (_, path, triangles, volume, digits) => {
    const outcome = bring(read(path), 'mm');
    expect(outcome.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
    expect(outcome.mesh && outcome.mesh.triangles.length / 3).toBe(triangles);
    expect(closedVolume(outcome)).toBeCloseTo(volume, digits);
  });
});

describe('meshes that need mending', () => {
  test('stl-models bunny, 69 451 triangles, 223 open edges: closed, said so, in the unit it was scanned in', () => {
    const raw = read(join(stlModels, 'objects/bunny.bin.stl'));
    const outcome = bring(raw);
    expect(outcome.unit).toBe('m');
    expect(outcome.findings).toMatchObject([
      { code: 'repair.unit-guessed', severity: 'warn' },
      { code: 'repair.holes-closed', severity: 'warn', values: { measured: 5, openEdges: 223 } },
      { code: 'repair.crossings-cut', severity: 'warn' },
    ]);
    expect(outcome.changes.remeshEdge).toBeUndefined();
    const volume = closedVolume(outcome);
    // The holes lie in the base. Closed by cones to the middle of their rims, the open surface bounds the same solid
    // but for the unevenness of the rims: their area (1070 mm2) times 2 mm is 0.3 % of it.
    const open = openRims(raw);
    expect(open.edges).toBe(223);
    const { positions, triangles } = raw;
    const cone = volumeOf({
      points: Array.from({ length: positions.length / 3 }, (_, v) => [
        1000 * (positions[v * 3] - open.middle[0]),
        1000 * (positions[v * 3 + 1] - open.middle[1]),
        1000 * (positions[v * 3 + 2] - open.middle[2]),
      ]),
      faces: Array.from({ length: triangles.length / 3 }, (_, f) => [
        triangles[f * 3],
        triangles[f * 3 + 1],
        triangles[f * 3 + 2],
      ]),
    });
    expect(Math.abs(volume / cone - 1)).toBeLessThan(0.003);
  });

  test('the closed bunny with faces torn out comes back to its published volume', () => {
    const { positions, cells } = require('bunny') as { positions: number[][]; cells: number[][] };
    const torn = cells.filter((_, face) => face % 41 !== 0);
    const raw = {
      positions: Float64Array.from(positions.flat()),
      triangles: Uint32Array.from(torn.flat()),
    };
    const outcome = bring(raw, 'cm');
    expect(outcome.findings.map(({ code }) => code)).toEqual(['repair.holes-closed']);
    expect(closedVolume(outcome) / 1000).toBeCloseTo(194.288372, 1);
  });

  test('node-stl Pterosaur, 201 286 triangles, two edges that join more than two faces', () => {
    const raw = read(join(nodeStl, 'Pterosaur_FDM.stl'));
    expect(raw.triangles.length / 3).toBe(201_286);
    const outcome = bring(raw, 'mm');
    expect(outcome.changes.counts).toMatchObject({ 'faces-dropped': 2 });
    expect(closedVolume(outcome) / outcome.changes.volumeBefore).toBeCloseTo(1, 6);
  });
});

test.each([
  'empty.stl',
  'fourVertices.ascii.stl',
  'incorrectFaceCounter.bin.stl',
  'missingEndsolid.ascii.stl',
  'missingFace.ascii.stl',
  'missingNormal.ascii.stl',
  'notANumberNormal.ascii.stl',
  'quad.ascii.stl',
  'singleFace.ascii.stl',
  'solidNameMismatch.ascii.stl',
  'twoVertices.ascii.stl',
  'wrongHeader.bin.stl',
  'wrongNormal.ascii.stl',
  'wrongNormals.ascii.stl',
])('stl-models broken/%s gives a closed mesh or a stop that says why', (name) => {
  const { mesh, findings } = readMesh(readFileSync(join(stlModels, 'broken', name)), name);
  const outcome = mesh && bring(mesh, 'mm');
  if (outcome?.mesh) {
    expect(closedVolume(outcome)).toBeGreaterThan(0);
  } else {
    const stops = [...findings, ...(outcome?.findings ?? [])].filter(({ severity }) => severity === 'stop');
    expect(stops.length).toBeGreaterThan(0);
    for (const stop of stops) {
      const { says, remedy } = sayFinding(stop, 'metric');
      expect(says.length * remedy.length).toBeGreaterThan(0);
    }
  }
});
