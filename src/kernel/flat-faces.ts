import { dot, sidesCrossed, type TriangleMesh, type Vec3 } from '../geometry/index.ts';
import { facesAround } from './faces-around.ts';

/** Swaps may pass a flat face on along a row of them; a row this long does not come about. */
const rounds = 8;

/**
 * Faces lower than this over their longest edge, mm, may have been turned over by rounding; then they lie folded on
 * the face beyond that edge and cut through what is under it.
 */
const thin = 2e-4;

/** Cosine between two faces' normals that no edge of a shape has: beyond it one lies folded on the other. */
const sharpest = -0.95;

/**
 * Turns away faces without area (three different corners exactly on one line), and thin ones that lie folded back on
 * their neighbor, by swapping the edge they have opposite their middle corner with the face beyond it; the surface
 * moves by no more than `thin`. A swap is left out where it would double an edge or turn a face over. Gives the
 * triangles, the same array where nothing was to do.
 */
export function flipFlatFaces({ positions, triangles }: TriangleMesh): Uint32Array {
  let result = triangles;
  for (let round = 0; round < rounds; round++) {
    const flat = flatFaces(positions, result);
    if (flat.length === 0) return result;
    const next = result.slice();
    const around = facesAround(cornersOf(flat, next), next);
    let swaps = 0;
    for (const face of flat) if (swapLongEdge(face, positions, next, around)) swaps++;
    if (swaps === 0) return result;
    result = next;
  }
  return result;
}

function flatFaces(p: Float32Array, triangles: Uint32Array): number[] {
  const flat: number[] = [];
  for (let face = 0; face < triangles.length; face += 3) {
    const [a, b, c] = [triangles[face], triangles[face + 1], triangles[face + 2]];
    const [x, y, z] = sidesCrossed(p, a, b, c);
    const longest2 = Math.max(distance2(p, a, b), distance2(p, b, c), distance2(p, c, a));
    // Height over the longest edge = |normal| / longest.
    if (x * x + y * y + z * z <= thin * thin * longest2) flat.push(face);
  }
  return flat;
}

const distance2 = (p: Float32Array, i: number, j: number): number =>
  (p[i * 3] - p[j * 3]) ** 2 + (p[i * 3 + 1] - p[j * 3 + 1]) ** 2 + (p[i * 3 + 2] - p[j * 3 + 2]) ** 2;

const normalOf = (p: Float32Array, triangles: Uint32Array, face: number): Vec3 =>
  sidesCrossed(p, triangles[face], triangles[face + 1], triangles[face + 2]);

function swapLongEdge(face: number, p: Float32Array, triangles: Uint32Array, around: Around): boolean {
  const length2 = (k: number): number => distance2(p, triangles[face + k], triangles[face + ((k + 1) % 3)]);
  const longest = [0, 1, 2].reduce((best, k) => (length2(k) > length2(best) ? k : best), 0);
  const from = triangles[face + longest];
  const to = triangles[face + ((longest + 1) % 3)];
  const middle = triangles[face + ((longest + 2) % 3)];
  const beyond = around.get(from)?.find((other) => runsAlong(other, to, from, triangles));
  if (beyond === undefined) return false;
  const far = [0, 1, 2].map((k) => triangles[beyond + k]).find((v) => v !== from && v !== to);
  if (far === undefined || far === middle) return false;
  const own = sidesCrossed(p, from, to, middle);
  const over = sidesCrossed(p, to, from, far);
  const without = dot(own, own) === 0;
  if (!without) {
    const beside = (around.get(middle) ?? []).filter(
      (other) => runsAlong(other, middle, to, triangles) || runsAlong(other, from, middle, triangles),
    );
    const folded = [over, ...beside.map((other) => normalOf(p, triangles, other))].some(
      (next) => dot(own, next) < sharpest * Math.sqrt(dot(own, own) * dot(next, next)),
    );
    if (!folded) return false;
    const flipped =
      dot(sidesCrossed(p, middle, from, far), over) <= 0 || dot(sidesCrossed(p, middle, far, to), over) <= 0;
    if (flipped) return false;
  }
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

const cornersOf = (faces: readonly number[], triangles: Uint32Array): number[] =>
  faces.flatMap((face) => [...triangles.subarray(face, face + 3)]);

const runsAlong = (face: number, a: number, b: number, triangles: Uint32Array): boolean =>
  [0, 1, 2].some((k) => triangles[face + k] === a && triangles[face + ((k + 1) % 3)] === b);
