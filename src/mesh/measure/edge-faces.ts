import { nextCorner, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';

/** Faces lower than this have no normal to trust, mm. */
const leastHeight = 0.01;

/** An edge with the two faces at it. */
export interface EdgeFaces {
  /** Its two vertices. */
  readonly edge: readonly [number, number];
  /** Unit normals of the faces. */
  readonly normals: readonly [Vec3, Vec3];
  /** Between the normals, rad: 0 where the faces lie in one plane. */
  readonly turnRad: number;
  /** Whether the material is hollow there: the faces look at each other. */
  readonly inner: boolean;
}

/** Hands out each edge of a closed indexed mesh once; those of faces too thin to have a direction are passed over. */
export function eachEdge(mesh: TriangleMesh, visit: (edge: EdgeFaces) => void): void {
  const { positions: p, triangles: t } = mesh;
  const owner = new Map<number, number>();
  const count = p.length / 3;
  for (let corner = 0; corner < t.length; corner++) {
    const [a, b] = [t[corner], t[nextCorner(corner)]];
    const other = owner.get(b * count + a);
    if (other === undefined) {
      owner.set(a * count + b, Math.floor(corner / 3));
      continue;
    }
    owner.delete(b * count + a);
    const [n, m] = [normalOf(mesh, Math.floor(corner / 3)), normalOf(mesh, other)];
    if (!n || !m) continue;
    const far = [0, 1, 2].map((k) => t[other * 3 + k]).find((vertex) => vertex !== a && vertex !== b) ?? a;
    const out = [0, 1, 2].reduce((sum, k) => sum + n[k] * (p[far * 3 + k] - p[a * 3 + k]), 0);
    const dot = n[0] * m[0] + n[1] * m[1] + n[2] * m[2];
    const turnRad = Math.acos(Math.max(-1, Math.min(1, dot)));
    visit({ edge: [a, b], normals: [n, m], turnRad, inner: out >= 0 });
  }
}

export const lengthOf = (p: Float32Array, [a, b]: readonly [number, number]): number =>
  Math.hypot(p[b * 3] - p[a * 3], p[b * 3 + 1] - p[a * 3 + 1], p[b * 3 + 2] - p[a * 3 + 2]);

export const middleOf = (p: Float32Array, [a, b]: readonly [number, number]): Vec3 => [
  (p[a * 3] + p[b * 3]) / 2,
  (p[a * 3 + 1] + p[b * 3 + 1]) / 2,
  (p[a * 3 + 2] + p[b * 3 + 2]) / 2,
];

function normalOf({ positions: p, triangles: t }: TriangleMesh, face: number): Vec3 | undefined {
  const [a, b, c] = [t[face * 3], t[face * 3 + 1], t[face * 3 + 2]];
  const [ux, uy, uz] = [0, 1, 2].map((k) => p[b * 3 + k] - p[a * 3 + k]);
  const [vx, vy, vz] = [0, 1, 2].map((k) => p[c * 3 + k] - p[a * 3 + k]);
  const n = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx] as const;
  const twice = Math.hypot(...n);
  const widest = Math.max(lengthOf(p, [a, b]), lengthOf(p, [b, c]), lengthOf(p, [c, a]));
  if (!(twice > leastHeight * widest)) return undefined;
  return [n[0] / twice, n[1] / twice, n[2] / twice];
}
