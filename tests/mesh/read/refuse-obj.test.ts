import { describe, expect, test } from 'vitest';
import { objFaces as faces, objPoints as points, read, tetrahedronObj } from '../mesh-files.ts';

describe('OBJ that is refused', () => {
  test.each<[string, string | Uint8Array, string, RegExp, object?]>([
    ['no faces', points, 'mesh.no-faces', /only 4 points/],
    ['nothing but comments', '# a leaf\n# and no more\n', 'mesh.no-faces', /no face/],
    [
      'point 0',
      points + faces.replace('f 1 3 2', 'f 0 3 2'),
      'mesh.bad-index',
      /point 0; points are counted from 1/,
      { line: 5, column: 3 },
    ],
    [
      'a point past the end',
      tetrahedronObj.replace('f 1 3 2', 'f 1 3 5'),
      'mesh.bad-index',
      /point 5, but the file holds 4/,
      { line: 5, column: 7 },
    ],
    [
      'a point far past the end',
      tetrahedronObj.replace('f 1 3 2', 'f 1 3 4000000000'),
      'mesh.bad-index',
      /point 4000000000/,
      { line: 5 },
    ],
    [
      'a point past all numbers',
      tetrahedronObj.replace('f 1 3 2', `f 1 3 ${'9'.repeat(400)}`),
      'mesh.unreadable',
      /stands where a point number/,
      { line: 5 },
    ],
    [
      'a point before the first',
      tetrahedronObj.replace('f 1 3 2', 'f 1 3 -5'),
      'mesh.bad-index',
      /point -5, but there are only 4 points before it/,
      { line: 5 },
    ],
    [
      'a corner that is no number',
      tetrahedronObj.replace('f 1 3 2', 'f 1 x 2'),
      'mesh.unreadable',
      /"x" stands where a point number/,
      { line: 5, column: 5 },
    ],
    ['a corner with a fraction', tetrahedronObj.replace('f 1 3 2', 'f 1 3.5 2'), 'mesh.unreadable', /"3.5"/],
    ['a corner without a point', tetrahedronObj.replace('f 1 3 2', 'f 1 /3 2'), 'mesh.unreadable', /"\/3"/],
    [
      'a face with two corners',
      tetrahedronObj.replace('f 1 3 2', 'f 1 3'),
      'mesh.unreadable',
      /has 2 corners/,
      { line: 5, column: 1 },
    ],
    [
      'a face without corners',
      tetrahedronObj.replace('f 1 3 2', 'f'),
      'mesh.unreadable',
      /has 0 corners/,
      { line: 5 },
    ],
    [
      'a face with very many corners',
      `${points}f ${'1 2 3 '.repeat(4000)}`,
      'mesh.unreadable',
      /more than 4000 corners/,
      { line: 5 },
    ],
    [
      'a point with two numbers',
      tetrahedronObj.replace('v 1 0 0', 'v 1 0'),
      'mesh.unreadable',
      /too few numbers/,
      { line: 2 },
    ],
    [
      'a point with very many numbers',
      tetrahedronObj.replace('v 1 0 0', 'v 1 0 0 1 1 1 1 1 1 1'),
      'mesh.unreadable',
      /more than eight/,
      { line: 2 },
    ],
    [
      'decimal commas',
      tetrahedronObj.replace('v 1 0 0', 'v 1,25 0 0'),
      'mesh.decimal-comma',
      /"1,25"/,
      { line: 2, column: 3 },
    ],
    [
      'a number that is none',
      tetrahedronObj.replace('v 1 0 0', 'v one 0 0'),
      'mesh.unreadable',
      /"one"/,
      { line: 2, column: 3 },
    ],
    ['all points infinite', tetrahedronObj.replaceAll('v 0', 'v 1e999'), 'mesh.not-finite', /4 of 4/],
    [
      'UTF-16',
      Uint8Array.from([0xff, 0xfe, ...[...tetrahedronObj].flatMap((c) => [c.charCodeAt(0), 0])]),
      'mesh.utf16',
      /UTF-16/,
    ],
  ])('%s', (_, content, code, says, at) => {
    const outcome = read(content, 'leaf.obj');
    expect(outcome.mesh).toBeUndefined();
    expect(outcome.findings.at(-1)).toMatchObject({ code, severity: 'stop', subject: 'leaf.obj' });
    expect(outcome.findings.at(-1)?.says).toMatch(says);
    if (at) expect(outcome.findings.at(-1)?.at).toMatchObject({ file: 'leaf.obj', ...at });
  });
});
