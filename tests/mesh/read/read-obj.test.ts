import { describe, expect, it, test } from 'vitest';
import {
  codesOf,
  objFaces as faces,
  facesOf,
  objPoints as points,
  read,
  tetrahedronObj,
  volumeOf,
  withFaces,
} from '../mesh-files.ts';

/** The area of all triangles, and their sum as vectors: equal for a flat polygon cut without overlap. */
function areas(outcome: ReturnType<typeof read>): { readonly sum: number; readonly net: number } {
  const { positions: p, triangles: t } = outcome.mesh ?? { positions: [], triangles: [] };
  const net = [0, 0, 0];
  let sum = 0;
  for (let h = 0; h < t.length; h += 3) {
    const [a, b, c] = [t[h] * 3, t[h + 1] * 3, t[h + 2] * 3];
    const u = [0, 1, 2].map((k) => p[b + k] - p[a + k]);
    const v = [0, 1, 2].map((k) => p[c + k] - p[a + k]);
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    for (let k = 0; k < 3; k++) net[k] += n[k] / 2;
    sum += Math.hypot(...n) / 2;
  }
  return { sum, net: Math.hypot(...net) };
}

describe('OBJ that is read, without a remark', () => {
  test.each<[string, string]>([
    ['plain', tetrahedronObj],
    ['CRLF', tetrahedronObj.replaceAll('\n', '\r\n')],
    ['CR', tetrahedronObj.replaceAll('\n', '\r')],
    ['a byte order mark', `\ufeff${tetrahedronObj}`],
    ['upper case', tetrahedronObj.toUpperCase()],
    ['no line end at the end', tetrahedronObj.trimEnd()],
    ['comments', `# ä leaf\n#f 1 2 9\n${tetrahedronObj.replaceAll('\n', ' # v 1 2\n')}`],
    ['v/vt', `vt 0 0\n${withFaces((v) => `${v}/1`)}`],
    ['v//vn', `vn 0 0 1\n${withFaces((v) => `${v}//1`)}`],
    ['v/vt/vn', `vt 0 0\nvn 0 0 1\n${withFaces((v) => `${v}/1/1`)}`],
    ['points named backwards', withFaces((v) => String(Number(v) - 5))],
    ['points named backwards, with more', withFaces((v) => `${Number(v) - 5}/-1/-1`)],
    ['faces before their points', faces + points],
    ['lines carried on', tetrahedronObj.replaceAll(' 1', ' \\\n 1').replaceAll(' 0', ' \\\r\n\t0')],
    ['a line carried on without a blank', tetrahedronObj.replace('f 1 3 2', 'f 1 3\\\n 2')],
    ['a name that is carried on', `o leaf \\\nf 1 2\n${tetrahedronObj}`],
    ['weights', tetrahedronObj.replace(/^v .*$/gm, '$& 1.0')],
    ['colors of points', tetrahedronObj.replace(/^v .*$/gm, '$& 0.5 0.25 1')],
    [
      'groups, materials and smoothing',
      `mtllib Käfer.mtl\no 甲虫\ng a b\nusemtl m\ns off\n${tetrahedronObj}`,
    ],
    ['scientific notation', tetrahedronObj.replace(/^v .*$/gm, (line) => line.replaceAll('1', '1.0e+0'))],
    ['the old word for a face', tetrahedronObj.replaceAll('f ', 'fo ')],
  ])('%s', (_, content) => {
    const outcome = read(content, 'leaf.obj');
    expect(outcome.findings).toEqual([]);
    expect(facesOf(outcome)).toBe(4);
    expect(outcome.mesh?.positions).toHaveLength(12);
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
    expect(outcome.mesh).not.toHaveProperty('unit');
  });
});

describe('polygons become triangles within their outline', () => {
  const ring = (n: number, radius: (i: number) => number): [number, number, number][] =>
    Array.from({ length: n }, (_, i) => {
      const angle = (2 * Math.PI * i) / n;
      return [radius(i) * Math.cos(angle), radius(i) * Math.sin(angle), 0];
    });
  /** Shoelace formula. */
  const shoelace = (outline: readonly (readonly number[])[]): number =>
    Math.abs(
      outline.reduce((sum, [x, y], i) => {
        const [u, v] = outline[(i + 1) % outline.length];
        return sum + x * v - u * y;
      }, 0),
    ) / 2;
  const shapes: readonly [string, readonly (readonly [number, number, number])[]][] = [
    [
      'a square',
      [
        [0, 0, 0],
        [1, 0, 0],
        [1, 1, 0],
        [0, 1, 0],
      ],
    ],
    [
      'an arrowhead',
      [
        [0, 0, 0],
        [2, -1, 0],
        [0.5, 0, 0],
        [2, 1, 0],
      ],
    ],
    [
      'an arrowhead begun elsewhere',
      [
        [2, -1, 0],
        [0.5, 0, 0],
        [2, 1, 0],
        [0, 0, 0],
      ],
    ],
    [
      'an L',
      [
        [0, 0, 0],
        [3, 0, 0],
        [3, 1, 0],
        [1, 1, 0],
        [1, 3, 0],
        [0, 3, 0],
      ],
    ],
    ['a round of 100', ring(100, () => 2)],
    ['a star of 50 points', ring(100, (i) => (i % 2 ? 1 : 3))],
    ['a star of 500 points', ring(1000, (i) => (i % 2 ? 1 : 3))],
    [
      'a square with points along its edges',
      [
        [0, 0, 0],
        [1, 0, 0],
        [2, 0, 0],
        [2, 1, 0],
        [2, 2, 0],
        [1, 2, 0],
        [0, 2, 0],
        [0, 1, 0],
      ],
    ],
    [
      'a comb',
      [
        ...Array.from({ length: 21 }, (_, i): [number, number, number] => [i, i % 2 ? 5 : 1, 0]),
        [20, 0, 0],
        [0, 0, 0],
      ],
    ],
  ];
  const turns: readonly [string, (p: readonly [number, number, number]) => readonly number[]][] = [
    ['flat', (p) => p],
    ['upright', ([x, y]) => [0.1, x, y]],
    ['aslant', ([x, y]) => [x * 0.6 - y * 0.64, x * 0.8 + y * 0.48, y * 0.6]],
    ['from below', ([x, y]) => [x, -y, 3]],
  ];
  const cases = shapes.flatMap(([name, shape]) =>
    turns.map(([how, turn]) => [`${name}, ${how}`, shape, turn] as const),
  );
  test.each(cases)('%s', (_, shape, turn) => {
    const obj = `${shape.map((p) => `v ${turn(p).join(' ')}`).join('\n')}\nf ${shape.map((_, i) => i + 1).join(' ')}\n`;
    const outcome = read(obj, 'leaf.obj');
    expect(codesOf(outcome)).toEqual(['mesh.polygons-cut']);
    expect(facesOf(outcome)).toBe(shape.length - 2);
    const { sum, net } = areas(outcome);
    const wanted = shoelace(shape);
    // A sum of absolute areas equal to the polygon's own means: no triangle outside, none twice, none turned over.
    expect(sum / wanted).toBeCloseTo(1, 9);
    expect(net / wanted).toBeCloseTo(1, 9);
    // Every edge of the outline is an edge of one triangle, in the outline's direction: neighbours still meet.
    const edges = new Set<string>();
    const t = outcome.mesh?.triangles ?? new Uint32Array();
    for (let h = 0; h < t.length; h++) edges.add(`${t[h]} ${t[h % 3 === 2 ? h - 2 : h + 1]}`);
    expect(shape.filter((_, i) => !edges.has(`${i} ${(i + 1) % shape.length}`))).toEqual([]);
  });

  it('reads a cube of six squares', () => {
    const outcome = read(
      'v 0 0 0\nv 2 0 0\nv 2 2 0\nv 0 2 0\nv 0 0 2\nv 2 0 2\nv 2 2 2\nv 0 2 2\nf 4 3 2 1\nf 5 6 7 8\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n',
      'button.obj',
    );
    expect(volumeOf(outcome)).toBeCloseTo(8, 12);
    expect(outcome.findings).toMatchObject([
      { code: 'mesh.polygons-cut', severity: 'note', values: { measured: 6 } },
    ]);
  });

  test.each([
    ['an outline that crosses itself', 'v 0 0 0\nv 2 2 0\nv 2 0 0\nv 0 1 0\nf 1 2 3 4\n', 2],
    ['an outline without a plane', 'v 0 0 0\nv 1 1 0\nv 1 0 0\nv 0 1 0\nf 1 2 3 4\n', 2],
    ['a star drawn in one stroke', 'v 0 3 0\nv 2 -3 0\nv -3 1 0\nv 3 1 0\nv -2 -3 0\nf 1 2 3 4 5\n', 3],
  ])('says of %s that its shape is doubtful', (_, content, count) => {
    const outcome = read(content, 'leaf.obj');
    expect(facesOf(outcome)).toBe(count);
    const rough = outcome.findings.find(({ code }) => code === 'mesh.polygons-rough');
    expect(rough).toMatchObject({
      severity: 'warn',
      at: { file: 'leaf.obj', line: content.split('\n').length - 1 },
    });
  });
});

describe('OBJ that is read, with a remark', () => {
  test.each<[string, string, string, object, number]>([
    [
      'lines and points',
      `${tetrahedronObj}l 1 2\nl 2 3\np 1\n`,
      'mesh.skipped',
      { which: 'statements', kinds: ['2 x "l"', '1 x "p"'] },
      4,
    ],
    [
      'points no face names',
      `v 900 900 900\n${tetrahedronObj.replaceAll(/^f.*$/gm, (l) => l.replaceAll(/\d/g, (v) => String(Number(v) + 1)))}`,
      'mesh.skipped',
      { which: 'points', points: 1 },
      4,
    ],
    [
      'a free-form curve',
      `${tetrahedronObj}curv 0 1 1 2\nend\n`,
      'mesh.skipped',
      { which: 'statements', kinds: ['1 x "curv"', '1 x "end"'] },
      4,
    ],
    [
      'one point that is no number',
      `${tetrahedronObj.replace('v 0 0 1', 'v 0 0 nan\nv 0 0 1').replaceAll(' 4', ' 5')}f 1 2 4\n`,
      'mesh.not-finite',
      { which: 'point', measured: 1, total: 5, line: 4 },
      4,
    ],
    [
      'points no face names, and more kinds of statements than are told apart',
      `${tetrahedronObj}v 9 9 9\n${Array.from({ length: 23 }, (_, i) => `word${i}\n`).join('')}`,
      'mesh.skipped',
      {
        which: 'statements-and-points',
        kinds: Array.from({ length: 20 }, (_, i) => `1 x "word${i}"`),
        more: 3,
        points: 1,
      },
      4,
    ],
  ])('%s', (_, content, code, values, count) => {
    const outcome = read(content, 'leaf.obj');
    expect(codesOf(outcome)).toContain(code);
    expect(outcome.findings.find((one) => one.code === code)?.values).toMatchObject(values);
    expect(facesOf(outcome)).toBe(count);
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
    expect(outcome.mesh?.positions).toHaveLength(12);
  });
});
