import type { TriangleMesh } from './triangles.ts';

/** Swaps may pass a flat face on along a row of them; a row this long does not come about. */
const rounds = 8;

/**
 * Turns away faces without area (three different corners exactly on one line) by swapping the edge they have
 * opposite their middle corner with the face beyond it; the surface does not move. A swap is left out where it would
 * double an edge. Gives the triangles, the same array where nothing was to do.
 */
export function flipFlatFaces({ positions, triangles }: TriangleMesh): Uint32Array {
  let result = triangles;
  for (let round = 0; round < rounds; round++) {
    const flat = flatFaces(positions, result);
    if (flat.length === 0) return result;
    if (result === triangles) result = triangles.slice();
    const around = facesAround(flat, result);
    let swaps = 0;
    for (const face of flat) if (swapLongEdge(face, positions, result, around)) swaps++;
    if (swaps === 0) return result;
  }
  return result;
}

function flatFaces(p: Float32Array, triangles: Uint32Array): number[] {
  const flat: number[] = [];
  for (let face = 0; face < triangles.length; face += 3) {
    const [a, b, c] = [triangles[face] * 3, triangles[face + 1] * 3, triangles[face + 2] * 3];
    const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
    const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
    if (uy * vz === uz * vy && uz * vx === ux * vz && ux * vy === uy * vx) flat.push(face);
  }
  return flat;
}

function swapLongEdge(face: number, p: Float32Array, triangles: Uint32Array, around: Around): boolean {
  const length2 = (k: number): number => {
    const a = triangles[face + k] * 3;
    const b = triangles[face + ((k + 1) % 3)] * 3;
    return (p[b] - p[a]) ** 2 + (p[b + 1] - p[a + 1]) ** 2 + (p[b + 2] - p[a + 2]) ** 2;
  };
  const longest = [0, 1, 2].reduce((best, k) => (length2(k) > length2(best) ? k : best), 0);
  const from = triangles[face + longest];
  const to = triangles[face + ((longest + 1) % 3)];
  const middle = triangles[face + ((longest + 2) % 3)];
  const beyond = around.get(from)?.find((other) => runsAlong(other, to, from, triangles));
  if (beyond === undefined) return false;
  const far = [0, 1, 2].map((k) => triangles[beyond + k]).find((v) => v !== from && v !== to);
  if (far === undefined || far === middle) return false;
  const joined = (other: number) =>
    runsAlong(other, middle, far, triangles) || runsAlong(other, far, middle, triangles);
  if (around.get(middle)?.some(joined)) return false;
  triangles.set([middle, from, far], face);
  triangles.set([middle, far, to], beyond);
  around.get(middle)?.push(beyond);
  around.get(far)?.push(face);
  return true;
}

/** Faces (index of their first corner) that had or got a vertex; read the corners to be sure. */
type Around = ReadonlyMap<number, number[]>;

function facesAround(flat: readonly number[], triangles: Uint32Array): Around {
  const around = new Map<number, number[]>();
  for (const face of flat) for (let k = 0; k < 3; k++) around.set(triangles[face + k], []);
  for (let corner = 0; corner < triangles.length; corner++) {
    around.get(triangles[corner])?.push(corner - (corner % 3));
  }
  return around;
}

const runsAlong = (face: number, a: number, b: number, triangles: Uint32Array): boolean =>
  [0, 1, 2].some((k) => triangles[face + k] === a && triangles[face + ((k + 1) % 3)] === b);
