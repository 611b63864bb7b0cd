import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeStl } from '../src/export/index.ts';
import { joinMeshes, type TriangleMesh } from '../src/geometry/index.ts';
import { box, flippedFaceBox, insideOut, openBox, torus } from './export/shapes.ts';
import { judgeStl, missingJudges, notRunText } from './judges.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'judged-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function judge(mesh: TriangleMesh) {
  const path = join(folder, 'mesh.stl');
  writeFileSync(path, writeStl(mesh, 'test'));
  return judgeStl(path);
}

const two = (mesh: TriangleMesh, other: TriangleMesh) => joinMeshes([mesh, other]);
const cube = box([10, 10, 10]);

/** What each judge must say of each shape; a judge that is not installed here says nothing. */
const cases: [string, TriangleMesh, { admesh: boolean; gtscheck: boolean }][] = [
  ['a box', box([10, 20, 30]), { admesh: true, gtscheck: true }],
  ['a ring', torus(20, 5, 40, 20), { admesh: true, gtscheck: true }],
  ['an open box', openBox(), { admesh: false, gtscheck: false }],
  ['a flipped face', flippedFaceBox(), { admesh: false, gtscheck: false }],
  ['an edge with four faces', two(cube, box([10, 10, 10], [10, 10, 0])), { admesh: true, gtscheck: false }],
  [
    'two boxes through each other',
    two(cube, box([10, 10, 10], [5, 5, 5])),
    { admesh: true, gtscheck: false },
  ],
  ['a box inside out', insideOut(cube), { admesh: false, gtscheck: true }],
];

describe('the judges see what is wrong', () => {
  test.each(cases)('%s', (_, mesh, expected) => {
    const { ran, faults } = judge(mesh);
    for (const name of ['admesh', 'gtscheck'] as const) {
      if (!ran.includes(name)) continue;
      expect({ name, sound: !faults.some((fault) => fault.startsWith(name)) }).toEqual({
        name,
        sound: expected[name],
      });
    }
  });

  test('admesh measures the box', () => {
    const { ran, volume, parts } = judge(box([10, 20, 30]));
    if (ran.includes('admesh')) expect({ volume, parts }).toEqual({ volume: 6000, parts: 1 });
  });
});

describe('a machine without them', () => {
  test('is told in plain words what was not run', () => {
    expect(missingJudges((program) => program === 'admesh', '')).toEqual(['gtscheck']);
    expect(notRunText(['gtscheck'])).toMatch(/Not run here, because not installed: gtscheck\./);
  });

  test('fails where CI=true', () => {
    expect(() => missingJudges(() => false, 'true')).toThrow(/admesh and gtscheck/);
    expect(missingJudges(() => true, 'true')).toEqual([]);
  });
});
