import type { TriangleMesh, Vec3 } from '../../src/geometry/index.ts';
import type { RawMesh } from '../../src/mesh/index.ts';

/** Shapes with a closed form, and the ways to spoil them. All closed and outward unless spoiled. */
export type Shape = { points: Vec3[]; faces: [number, number, number][] };

export function box(size: Vec3, at: Vec3 = [0, 0, 0]): Shape {
  const points: Vec3[] = [];
  for (let i = 0; i < 8; i++) {
    points.push([
      at[0] + (i & 1 ? size[0] : 0),
      at[1] + (i & 2 ? size[1] : 0),
      at[2] + (i & 4 ? size[2] : 0),
    ]);
  }
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const faces = quads.flatMap(([a, b, c, d]): [number, number, number][] => [
    [a, b, c],
    [a, c, d],
  ]);
  return { points, faces };
}

/** A sphere of longitudes x latitudes; its volume is told by `volumeOf`, the round one's is 4/3 pi r3. */
export function ball(radius: number, around: number, at: Vec3 = [0, 0, 0]): Shape {
  const rings = around / 2;
  const points: Vec3[] = [[at[0], at[1], at[2] - radius]];
  for (let j = 1; j < rings; j++) {
    const latitude = -Math.PI / 2 + (Math.PI * j) / rings;
    for (let i = 0; i < around; i++) {
      const turn = (2 * Math.PI * i) / around;
      points.push([
        at[0] + radius * Math.cos(latitude) * Math.cos(turn),
        at[1] + radius * Math.cos(latitude) * Math.sin(turn),
        at[2] + radius * Math.sin(latitude),
      ]);
    }
  }
  points.push([at[0], at[1], at[2] + radius]);
  const top = points.length - 1;
  const on = (j: number, i: number): number => 1 + (j - 1) * around + (i % around);
  const faces: [number, number, number][] = [];
  for (let i = 0; i < around; i++) {
    faces.push([0, on(1, i + 1), on(1, i)], [top, on(rings - 1, i), on(rings - 1, i + 1)]);
    for (let j = 1; j < rings - 1; j++) {
      faces.push([on(j, i), on(j, i + 1), on(j + 1, i + 1)], [on(j, i), on(j + 1, i + 1), on(j + 1, i)]);
    }
  }
  return { points, faces };
}

export function torus(ringRadius: number, tubeRadius: number, around: number, tube: number): Shape {
  const points: Vec3[] = [];
  for (let i = 0; i < around; i++) {
    const a = (2 * Math.PI * i) / around;
    for (let j = 0; j < tube; j++) {
      const b = (2 * Math.PI * j) / tube;
      const r = ringRadius + tubeRadius * Math.cos(b);
      points.push([r * Math.cos(a), r * Math.sin(a), tubeRadius * Math.sin(b)]);
    }
  }
  const on = (i: number, j: number): number => (i % around) * tube + (j % tube);
  const faces: [number, number, number][] = [];
  for (let i = 0; i < around; i++) {
    for (let j = 0; j < tube; j++) {
      faces.push([on(i, j), on(i + 1, j), on(i + 1, j + 1)], [on(i, j), on(i + 1, j + 1), on(i, j + 1)]);
    }
  }
  return { points, faces };
}

export function together(...shapes: Shape[]): Shape {
  const points: Vec3[] = [];
  const faces: [number, number, number][] = [];
  for (const shape of shapes) {
    for (const [a, b, c] of shape.faces) {
      faces.push([a + points.length, b + points.length, c + points.length]);
    }
    points.push(...shape.points);
  }
  return { points, faces };
}

export const insideOut = ({ points, faces }: Shape): Shape => ({
  points,
  faces: faces.map(([a, b, c]) => [a, c, b]),
});

export const without = ({ points, faces }: Shape, gone: (face: number) => boolean): Shape => ({
  points,
  faces: faces.filter((_, face) => !gone(face)),
});

export const flipped = ({ points, faces }: Shape, which: (face: number) => boolean): Shape => ({
  points,
  faces: faces.map(([a, b, c], face) => (which(face) ? [a, c, b] : [a, b, c])),
});

export const mapped = ({ points, faces }: Shape, move: (p: Vec3) => Vec3): Shape => ({
  points: points.map(move),
  faces,
});

/** As an STL has it: three points of its own for each face. */
export function soup({ points, faces }: Shape): RawMesh {
  const positions = Float64Array.from(faces.flatMap((face) => face.flatMap((v) => points[v])));
  return { positions, triangles: Uint32Array.from({ length: faces.length * 3 }, (_, i) => i) };
}

/** As an OBJ has it: points listed once. */
export const indexed = ({ points, faces }: Shape): RawMesh => ({
  positions: Float64Array.from(points.flat()),
  triangles: Uint32Array.from(faces.flat()),
});

export const asMesh = (shape: Shape): TriangleMesh => {
  const { positions, triangles } = indexed(shape);
  return { positions: Float32Array.from(positions), triangles };
};

/** Signed volume by the divergence theorem, in float64; shares no code with the program. */
export const volumeOf = ({ points, faces }: Shape): number =>
  faces.reduce((sum, [a, b, c]) => {
    const [ax, ay, az] = points[a];
    const [bx, by, bz] = points[b];
    const [cx, cy, cz] = points[c];
    return sum + (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
  }, 0);

export const shapeOf = ({ positions, triangles }: TriangleMesh): Shape => ({
  points: Array.from(
    { length: positions.length / 3 },
    (_, v): Vec3 => [positions[v * 3], positions[v * 3 + 1], positions[v * 3 + 2]],
  ),
  faces: Array.from({ length: triangles.length / 3 }, (_, f): [number, number, number] => [
    triangles[f * 3],
    triangles[f * 3 + 1],
    triangles[f * 3 + 2],
  ]),
});

/** Edges that are not run through exactly once each way, counted on a map of strings. 0 for a closed skin. */
export function unpairedEdges({ triangles }: TriangleMesh): number {
  const edges = new Map<string, number>();
  for (let f = 0; f < triangles.length; f += 3) {
    for (let k = 0; k < 3; k++) {
      const key = `${triangles[f + k]}>${triangles[f + ((k + 1) % 3)]}`;
      edges.set(key, (edges.get(key) ?? 0) + 1);
    }
  }
  let bad = 0;
  for (const [key, count] of edges) {
    const back = edges.get(key.split('>').reverse().join('>')) ?? 0;
    if (count !== 1 || back !== 1) bad++;
  }
  return bad;
}
