import { expect, test } from 'vitest';
import { closeHoles } from '../../../src/mesh/repair/close-holes.ts';
import { isPaired, pairEdges } from '../../../src/mesh/repair/edges.ts';
import { spanLoop } from '../../../src/mesh/repair/span-loop.ts';
import { asMesh, ball, shapeOf, torus, volumeOf, without } from '../rough-shapes.ts';

const close = (shape: Parameters<typeof asMesh>[0], limit: number) => {
  const mesh = asMesh(shape);
  return closeHoles(mesh, pairEdges(mesh.triangles, mesh.positions.length / 3), limit);
};

test.each([12, 100, 300, 20_000])(
  'a regular polygon of %i sides is spanned by n - 2 faces over its own area',
  (n) => {
    const points = Array.from({ length: n }, (_, i) => {
      const a = (2 * Math.PI * i) / n;
      return [Math.cos(a), Math.sin(a), 0] as const;
    });
    const faces = spanLoop(points, () => false) ?? [];
    expect(faces).toHaveLength(3 * (n - 2));
    let area = 0;
    for (let f = 0; f < faces.length; f += 3) {
      const [a, b, c] = [points[faces[f]], points[faces[f + 1]], points[faces[f + 2]]];
      const one = ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2;
      expect(one).toBeGreaterThan(-1e-12);
      area += one;
    }
    expect(area).toBeCloseTo((n / 2) * Math.sin((2 * Math.PI) / n), 9);
  },
);

test('a chain with a bay is not spanned across the bay', () => {
  const bay = [
    [0, 0, 0],
    [4, 0, 0],
    [4, 4, 0],
    [2, 1, 0],
    [0, 4, 0],
  ] as const;
  const faces = spanLoop([...bay], () => false) ?? [];
  const area = (f: number) => {
    const [a, b, c] = [bay[faces[f]], bay[faces[f + 1]], bay[faces[f + 2]]];
    return ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2;
  };
  // Shoelace: 10 mm2.
  expect(area(0) + area(3) + area(6)).toBeCloseTo(10, 9);
  for (const f of [0, 3, 6]) expect(area(f)).toBeGreaterThan(0);
});

test('a long rim with points in line keeps them all: the sides of a square, 200 points each', () => {
  const side = 200;
  const points = Array.from({ length: 4 * side }, (_, i) => {
    const t = (i % side) / side;
    return (
      [
        [t, 0, 0],
        [1, t, 0],
        [1 - t, 1, 0],
        [0, 1 - t, 0],
      ] as const
    )[Math.floor(i / side)];
  });
  const faces = spanLoop(points, () => false) ?? [];
  expect(faces).toHaveLength(3 * (4 * side - 2));
  const edges = new Set(faces.map((v, h) => `${v}>${faces[h % 3 === 2 ? h - 2 : h + 1]}`));
  expect(edges.size).toBe(faces.length);
  for (let i = 0; i < points.length; i++) expect(edges.has(`${i}>${(i + 1) % points.length}`)).toBe(true);
});

test('no edge is made twice: undefined where every way needs one that is taken', () => {
  const square = [
    [0, 0, 0],
    [1, 0, 0],
    [1, 1, 0],
    [0, 1, 0],
  ] as const;
  expect(spanLoop([...square], () => true)).toBeUndefined();
  expect(spanLoop([...square], (i, j) => Math.min(i, j) === 0)).toEqual([0, 1, 3, 1, 2, 3]);
});

test('the cap off a ball: flat, so spanned though wide; the volume is the ball less the cap', () => {
  const n = 64;
  const shape = ball(10, n);
  const top = Math.PI / 2 - (2 * Math.PI * 4) / n;
  const height = 10 * (1 - Math.sin(top));
  const cut = without(shape, (face) =>
    shape.faces[face].some((v) => shape.points[v][2] > 10 - height + 1e-6),
  );
  const outcome = close(cut, 0.1);
  expect(outcome).toMatchObject({ closed: 1, left: 0 });
  // Cap: pi h2 (3 r - h) / 3; the polygon loses up to 2 (pi / n)2 of the ball.
  const exact = (4 / 3) * Math.PI * 1000 - (Math.PI * height ** 2 * (30 - height)) / 3;
  const volume = volumeOf(shapeOf(outcome.mesh));
  expect(volume).toBeLessThan(exact);
  expect(volume).toBeGreaterThan(exact * (1 - 2 * (Math.PI / n) ** 2));
  // The rim is a polygon on a circle: its width 4 A / P is the inscribed diameter.
  const rim = 10 * Math.cos(top);
  expect(outcome.widest).toBeCloseTo(2 * rim * Math.cos(Math.PI / n), 4);
});

test('a hole that is neither flat nor narrow stays open', () => {
  const shape = torus(20, 5, 64, 32);
  const gone = without(shape, (face) =>
    shape.faces[face].some((v) => shape.points[v][0] > 15 && shape.points[v][2] > -3),
  );
  const outcome = close(gone, 1);
  expect(outcome).toMatchObject({ closed: 0, added: 0, left: 1 });
});

test('a hole that narrows to a point is spanned as two', () => {
  const shape = ball(10, 32);
  // Two faces that share one point only.
  const [a] = shape.faces.keys();
  const b = shape.faces.findIndex(
    (face, i) => i > 0 && face.filter((v) => shape.faces[a].includes(v)).length === 1,
  );
  const outcome = close(
    without(shape, (face) => face === a || face === b),
    5,
  );
  expect(outcome).toMatchObject({ closed: 2, added: 2 });
  expect(isPaired(pairEdges(outcome.mesh.triangles, outcome.mesh.positions.length / 3))).toBe(true);
});
