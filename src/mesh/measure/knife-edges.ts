import type { TriangleMesh, Vec3 } from '../../kernel/index.ts';

export interface KnifeEdges {
  /** Of all of them, mm. */
  readonly length: number;
  /** Angle of the material at the sharpest, rad. */
  readonly sharpestRad: number;
  /** Middle of the longest. */
  readonly place: Vec3;
}

/** Faces lower than this have no normal to trust, mm. */
const leastHeight = 0.01;

/**
 * Outer edges of a closed indexed mesh at which the material is sharper than `limitRad`; undefined where there are
 * none. Edges of faces too thin to have a direction are passed over.
 */
export function knifeEdges(mesh: TriangleMesh, limitRad: number): KnifeEdges | undefined {
  const { positions: p, triangles: t } = mesh;
  const owner = new Map<number, number>();
  const count = p.length / 3;
  let length = 0;
  let sharpest = Number.POSITIVE_INFINITY;
  let longest = 0;
  let place: Vec3 = [0, 0, 0];
  for (let corner = 0; corner < t.length; corner++) {
    const [a, b] = [t[corner], t[nextCorner(corner)]];
    const other = owner.get(b * count + a);
    if (other === undefined) {
      owner.set(a * count + b, Math.floor(corner / 3));
      continue;
    }
    owner.delete(b * count + a);
    const angle = materialAngle(mesh, Math.floor(corner / 3), other, [a, b]);
    if (angle === undefined || angle >= limitRad) continue;
    const along = distance(p, a, b);
    length += along;
    sharpest = Math.min(sharpest, angle);
    if (along > longest) {
      longest = along;
      place = [0, 1, 2].map((axis) => (p[a * 3 + axis] + p[b * 3 + axis]) / 2) as unknown as Vec3;
    }
  }
  return length > 0 ? { length, sharpestRad: sharpest, place } : undefined;
}

const nextCorner = (corner: number): number => (corner % 3 === 2 ? corner - 2 : corner + 1);

const distance = (p: Float32Array, a: number, b: number): number =>
  Math.hypot(p[b * 3] - p[a * 3], p[b * 3 + 1] - p[a * 3 + 1], p[b * 3 + 2] - p[a * 3 + 2]);

/** Angle of the material between two faces at their common edge; undefined where the edge is an inner one. */
function materialAngle(
  mesh: TriangleMesh,
  one: number,
  other: number,
  edge: readonly [number, number],
): number | undefined {
  const [n, m] = [normalOf(mesh, one), normalOf(mesh, other)];
  if (!n || !m) return undefined;
  const { positions: p, triangles: t } = mesh;
  const far = [0, 1, 2].map((k) => t[other * 3 + k]).find((v) => !edge.includes(v)) ?? edge[0];
  const out = [0, 1, 2].reduce((sum, k) => sum + n[k] * (p[far * 3 + k] - p[edge[0] * 3 + k]), 0);
  if (out >= 0) return undefined;
  const dot = n[0] * m[0] + n[1] * m[1] + n[2] * m[2];
  return Math.PI - Math.acos(Math.max(-1, Math.min(1, dot)));
}

function normalOf({ positions: p, triangles: t }: TriangleMesh, face: number): Vec3 | undefined {
  const [a, b, c] = [t[face * 3], t[face * 3 + 1], t[face * 3 + 2]];
  const [ux, uy, uz] = [0, 1, 2].map((k) => p[b * 3 + k] - p[a * 3 + k]);
  const [vx, vy, vz] = [0, 1, 2].map((k) => p[c * 3 + k] - p[a * 3 + k]);
  const n = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx] as const;
  const twice = Math.hypot(...n);
  const widest = Math.max(distance(p, a, b), distance(p, b, c), distance(p, c, a));
  if (!(twice > leastHeight * widest)) return undefined;
  return [n[0] / twice, n[1] / twice, n[2] / twice];
}
