import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { auditStl, isClosed } from '../../src/export/audit.ts';
import { writeStl } from '../../src/export/stl.ts';
import { joinMeshes, type TriangleMesh } from '../../src/geometry/index.ts';
import {
  box,
  facesOf,
  flippedFaceBox,
  insideOut,
  meshOf,
  openBox,
  tetrahedron,
  torus,
  withFaces,
} from './shapes.ts';

const audit = (mesh: TriangleMesh) => auditStl(writeStl(mesh, 'test'));

describe('closed shapes: Euler characteristic 2 - 2 g and closed-form volumes', () => {
  test('the corner tetrahedron: V - E + F = 4 - 6 + 4 = 2, volume 1/6', () => {
    const found = audit(tetrahedron);
    expect(found).toMatchObject({ triangles: 4, vertices: 4, edges: 6, euler: 2, shells: 1 });
    expect(found.volume).toBeCloseTo(1 / 6, 12);
    expect(isClosed(found)).toBe(true);
  });

  test('a box: 8 - 18 + 12 = 2, exact volume, area and bounds', () => {
    const found = audit(box([10, 20, 30], [-5, 1, 2]));
    expect(found).toMatchObject({ vertices: 8, edges: 18, euler: 2, volume: 6000, area: 2200 });
    expect(found.bounds).toEqual({ min: [-5, 1, 2], max: [5, 21, 32] });
    expect(found.faultAt).toBeUndefined();
  });

  test('a ring: 0; its volume tends to Pappus 2 pi^2 R r^2', () => {
    const found = audit(torus(20, 5, 400, 200));
    expect(found).toMatchObject({ triangles: 160_000, euler: 0, shells: 1 });
    // The polygonal ring is smaller by O(1/n^2): 2 pi^2 / 3 (1/200^2 + 1/400^2) = 2e-4 of it.
    expect(found.volume / (2 * Math.PI ** 2 * 20 * 25)).toBeGreaterThan(1 - 3e-4);
    expect(found.volume / (2 * Math.PI ** 2 * 20 * 25)).toBeLessThan(1);
    expect(isClosed(found)).toBe(true);
  });

  test('a hollow box: two shells, 4, and the void taken off', () => {
    const found = audit(joinMeshes([box([10, 10, 10]), insideOut(box([2, 2, 2], [4, 4, 4]))]));
    expect(found).toMatchObject({ shells: 2, euler: 4, volume: 992 });
    expect(isClosed(found)).toBe(true);
  });

  test('a small box far from the origin keeps its volume', () => {
    // float32 steps by 1/128 at 1e5, so these corners are exact.
    expect(audit(box([0.5, 0.25, 0.125], [100_000, 100_000, 0])).volume).toBe(0.5 * 0.25 * 0.125);
  });

  test('0 and -0 are one place', () => {
    const mesh = box([1, 1, 1]);
    const soup = meshOf(
      facesOf(mesh).flatMap((face) =>
        face.map((v): [number, number, number] => [
          mesh.positions[v * 3] || -0,
          mesh.positions[v * 3 + 1] || (v % 2 ? 0 : -0),
          mesh.positions[v * 3 + 2],
        ]),
      ),
      facesOf(mesh).map((_, i) => [3 * i, 3 * i + 1, 3 * i + 2]),
    );
    expect(isClosed(audit(soup))).toBe(true);
  });
});

describe('what is not closed', () => {
  const cases: [string, TriangleMesh, Partial<ReturnType<typeof audit>>][] = [
    ['a box without one face', openBox(), { openEdges: 3, nonManifoldEdges: 0, flippedEdges: 0, euler: 1 }],
    ['a box with one face turned over', flippedFaceBox(), { openEdges: 0, flippedEdges: 3 }],
    [
      'two boxes that share one edge (four faces there)',
      joinMeshes([box([1, 1, 1]), box([1, 1, 1], [1, 1, 0])]),
      { openEdges: 0, nonManifoldEdges: 1, flippedEdges: 0 },
    ],
    [
      'two boxes that touch in one corner',
      joinMeshes([box([1, 1, 1]), box([1, 1, 1], [1, 1, 1])]),
      { openEdges: 0, nonManifoldEdges: 0, pinchedVertices: 1, shells: 2 },
    ],
    [
      'a face there twice',
      withFaces(tetrahedron, [...facesOf(tetrahedron), [2, 1, 0]]),
      { duplicates: 1, nonManifoldEdges: 3 },
    ],
    [
      'a face with a repeated vertex',
      withFaces(tetrahedron, [...facesOf(tetrahedron), [1, 1, 3]]),
      { degenerate: 1, openEdges: 0, euler: 2, shells: 1 },
    ],
    [
      'a pillow of one triangle and its back',
      withFaces(tetrahedron, [
        [0, 1, 2],
        [0, 2, 1],
      ]),
      { duplicates: 1 },
    ],
    ['a box inside out', insideOut(box([1, 2, 3])), { openEdges: 0, volume: -6 }],
    ['nothing', meshOf([], []), { triangles: 0, volume: 0, shells: 0 }],
    ['a corner that is no number', withNaN(), { notFinite: 4 }],
  ];
  test.each(cases)('%s', (_, mesh, expected) => {
    const found = audit(mesh);
    expect(found).toMatchObject(expected);
    expect(isClosed(found)).toBe(false);
  });

  test('a vertex on a neighbour edge: a face without area closes the edges, and is named', () => {
    const mesh = meshOf(
      [
        [0, 0, 0],
        [2, 0, 0],
        [0, 2, 0],
        [0, 0, 2],
        [1, 0, 0],
      ],
      [
        [0, 2, 4],
        [4, 2, 1],
        [0, 1, 3],
        [0, 3, 2],
        [1, 2, 3],
        [0, 4, 1],
      ],
    );
    expect(audit(mesh)).toMatchObject({ degenerate: 1, openEdges: 0, flippedEdges: 0 });
    expect(isClosed(audit(mesh))).toBe(false);
  });

  test('says where: the first open edge of a box without a bottom face', () => {
    const at = audit(openBox()).faultAt;
    expect(at?.[2]).toBe(0);
  });

  test('bytes that are not a whole STL are refused', () => {
    expect(() => auditStl(new Uint8Array(20))).toThrow(RangeError);
    expect(() => auditStl(writeStl(tetrahedron, 'x').subarray(0, 200))).toThrow(RangeError);
  });
});

function withNaN(): TriangleMesh {
  const mesh = box([1, 1, 1]);
  const positions = mesh.positions.slice();
  // Four faces use vertex 5; the count is of corners.
  positions[5 * 3] = Number.NaN;
  return { positions, triangles: mesh.triangles };
}

/** The same counts by the plainest means: words as keys, and every pair looked at. */
function plainCount(mesh: TriangleMesh) {
  const word = (v: number) => [0, 1, 2].map((k) => mesh.positions[3 * v + k] + 0).join();
  const faces = facesOf(mesh).map((face) => face.map(word));
  const uses = new Map<string, number[]>();
  for (const face of faces) {
    for (const [k, from] of face.entries()) {
      const to = face[(k + 1) % 3];
      const key = [from, to].sort().join(' ');
      uses.set(key, [...(uses.get(key) ?? []), from < to ? 1 : -1]);
    }
  }
  const edges = [...uses.values()];
  const keys = faces.map((face) => [...face].sort().join(' '));
  const groups = faces.map((_, i) => i);
  for (const [i, face] of faces.entries()) {
    for (const [j, other] of faces.entries()) {
      if (face.filter((v) => other.includes(v)).length < 2) continue;
      const [from, to] = [groups[j], groups[i]];
      for (const [k, group] of groups.entries()) if (group === from) groups[k] = to;
    }
  }
  return {
    vertices: new Set(faces.flat()).size,
    edges: edges.length,
    openEdges: edges.filter(({ length }) => length === 1).length,
    nonManifoldEdges: edges.filter(({ length }) => length > 2).length,
    flippedEdges: edges.filter((ways) => ways.length === 2 && ways[0] === ways[1]).length,
    duplicates: keys.length - new Set(keys).size,
    shells: new Set(groups).size,
  };
}

test('any selection of faces, some turned, some twice: the same counts as by plain counting', () => {
  const whole = joinMeshes([torus(3, 1, 5, 4), box([1, 1, 1]), box([1, 1, 1], [1, 1, 0])]);
  const faces = facesOf(whole);
  const choice = fc.record({ face: fc.nat(faces.length - 1), turned: fc.boolean() });
  fc.assert(
    fc.property(fc.array(choice, { minLength: 1, maxLength: 70 }), (chosen) => {
      const mesh = withFaces(
        whole,
        chosen.map(({ face, turned }) => {
          const [a, b, c] = faces[face];
          return turned ? [c, b, a] : [a, b, c];
        }),
      );
      expect(audit(mesh)).toMatchObject(plainCount(mesh));
    }),
    { seed: 7, numRuns: 150 },
  );
});

test('a million faces are judged like a hundred', () => {
  const found = auditStl(writeStl(torus(100, 20, 1000, 500), 'test'));
  expect(found).toMatchObject({ triangles: 1_000_000, euler: 0 });
  expect(isClosed(found)).toBe(true);
});

test('a vertex with a hundred thousand faces is judged like another', () => {
  const sides = 100_000;
  const rim = Array.from({ length: sides }, (_, i) => (2 * Math.PI * i) / sides);
  const positions = Float32Array.from([
    ...[0, 0, 0, 0, 0, 90],
    ...rim.flatMap((a) => [100 * Math.cos(a), 100 * Math.sin(a), 0]),
  ]);
  const triangles = Uint32Array.from(
    rim.flatMap((_, i) => [0, 2 + ((i + 1) % sides), 2 + i, 1, 2 + i, 2 + ((i + 1) % sides)]),
  );
  const found = auditStl(writeStl({ positions, triangles }, 'cone'));
  expect(found).toMatchObject({ triangles: 2 * sides, vertices: sides + 2, euler: 2, duplicates: 0 });
  expect(isClosed(found)).toBe(true);
});
