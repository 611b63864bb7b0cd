import { describe, expect, test } from 'vitest';
import { objFaces as faces, objPoints as points, read, tetrahedronObj } from '../mesh-files.ts';

describe('OBJ that is refused', () => {
  test.each<[string, string | Uint8Array, string, object, object?]>([
    ['no faces', points, 'mesh.no-faces', { which: 'points', points: 4 }],
    ['nothing but comments', '# a leaf\n# and no more\n', 'mesh.no-faces', { which: 'points' }],
    [
      'point 0',
      points + faces.replace('f 1 3 2', 'f 0 3 2'),
      'mesh.bad-index',
      { which: 'zero' },
      { line: 5, column: 3 },
    ],
    [
      'a point past the end',
      tetrahedronObj.replace('f 1 3 2', 'f 1 3 5'),
      'mesh.bad-index',
      { which: 'after', point: 5, points: 4 },
      { line: 5, column: 7 },
    ],
    [
      'a point far past the end',
      tetrahedronObj.replace('f 1 3 2', 'f 1 3 4000000000'),
      'mesh.bad-index',
      { which: 'after', point: 4_000_000_000 },
      { line: 5 },
    ],
    [
      'a point past all numbers',
      tetrahedronObj.replace('f 1 3 2', `f 1 3 ${'9'.repeat(400)}`),
      'mesh.unreadable',
      { which: 'point-number' },
      { line: 5 },
    ],
    [
      'a point before the first',
      tetrahedronObj.replace('f 1 3 2', 'f 1 3 -5'),
      'mesh.bad-index',
      { which: 'before', point: -5, points: 4 },
      { line: 5 },
    ],
    [
      'a corner that is no number',
      tetrahedronObj.replace('f 1 3 2', 'f 1 x 2'),
      'mesh.unreadable',
      { which: 'point-number', text: 'x' },
      { line: 5, column: 5 },
    ],
    [
      'a corner with a fraction',
      tetrahedronObj.replace('f 1 3 2', 'f 1 3.5 2'),
      'mesh.unreadable',
      { which: 'point-number', text: '3.5' },
    ],
    [
      'a corner without a point',
      tetrahedronObj.replace('f 1 3 2', 'f 1 /3 2'),
      'mesh.unreadable',
      { which: 'point-number', text: '/3' },
    ],
    [
      'a face with two corners',
      tetrahedronObj.replace('f 1 3 2', 'f 1 3'),
      'mesh.unreadable',
      { which: 'corners-few', count: 2 },
      { line: 5, column: 1 },
    ],
    [
      'a face without corners',
      tetrahedronObj.replace('f 1 3 2', 'f'),
      'mesh.unreadable',
      { which: 'corners-few', count: 0 },
      { line: 5 },
    ],
    [
      'a face with very many corners',
      `${points}f ${'1 2 3 '.repeat(4000)}`,
      'mesh.unreadable',
      { which: 'corners-many', count: 4000 },
      { line: 5 },
    ],
    [
      'a point with two numbers',
      tetrahedronObj.replace('v 1 0 0', 'v 1 0'),
      'mesh.unreadable',
      { which: 'numbers-few', statement: 'point' },
      { line: 2 },
    ],
    [
      'a point with very many numbers',
      tetrahedronObj.replace('v 1 0 0', 'v 1 0 0 1 1 1 1 1 1 1'),
      'mesh.unreadable',
      { which: 'numbers-many', statement: 'point' },
      { line: 2 },
    ],
    [
      'decimal commas',
      tetrahedronObj.replace('v 1 0 0', 'v 1,25 0 0'),
      'mesh.decimal-comma',
      { text: '1,25' },
      { line: 2, column: 3 },
    ],
    [
      'a number that is none',
      tetrahedronObj.replace('v 1 0 0', 'v one 0 0'),
      'mesh.unreadable',
      { which: 'number', text: 'one', statement: 'point' },
      { line: 2, column: 3 },
    ],
    [
      'all points infinite',
      tetrahedronObj.replaceAll('v 0', 'v 1e999'),
      'mesh.not-finite',
      { which: 'point', measured: 4, total: 4 },
    ],
    [
      'UTF-16',
      Uint8Array.from([0xff, 0xfe, ...[...tetrahedronObj].flatMap((c) => [c.charCodeAt(0), 0])]),
      'mesh.utf16',
      {},
    ],
  ])('%s', (_, content, code, values, at) => {
    const outcome = read(content, 'leaf.obj');
    expect(outcome.mesh).toBeUndefined();
    expect(outcome.findings.at(-1)).toMatchObject({ code, severity: 'stop', subject: 'leaf.obj', values });
    if (at) expect(outcome.findings.at(-1)?.at).toMatchObject({ file: 'leaf.obj', ...at });
  });
});
