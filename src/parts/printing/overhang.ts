import type { TriangleMesh, Vec3 } from '../../geometry/index.ts';

/** A face no higher than this is of the first layer, which the bed holds, mm. Common practice, no published source. */
const firstLayer = 0.3;
/** A ceiling no wider between walls that come down is bridged, mm: letters, tips of holes. Common practice. */
const bridged = 2;
/** Below its edge by less than this a neighbor does not come down, mm. */
const level = 1e-3;

export interface Overhang {
  /** mm2 of faces that hang. */
  readonly area: number;
  readonly steepestRad: number;
  /** Middle of the largest face of the largest patch; undefined where nothing hangs. */
  readonly place?: Vec3;
}

interface Patch {
  area: number;
  /** Of its outline, mm. */
  outline: number;
  steepest: number;
  largest: number;
  place: Vec3;
  /** Whether walls come down from all of its outline. */
  walled: boolean;
}

/**
 * Faces of a closed solid standing on z = 0 that lean out by more than `limitRad` from upright (a ceiling: a quarter
 * turn), over the first layer; ceilings between walls that a printer bridges are left out. A patch of such faces is
 * as wide as twice its area over its outline.
 */
export function overhang(mesh: TriangleMesh, limitRad: number): Overhang {
  const patches = patchesOf(mesh, hangingFaces(mesh, Math.sin(limitRad))).filter(
    ({ walled, area, outline }) => !(walled && 2 * area < bridged * outline),
  );
  const area = patches.reduce((sum, patch) => sum + patch.area, 0);
  const steepest = patches.reduce((most, patch) => Math.max(most, patch.steepest), 0);
  const [largest] = [...patches].sort((a, b) => b.area - a.area);
  return { area, steepestRad: Math.asin(Math.min(1, steepest)), ...(largest && { place: largest.place }) };
}

interface Hanging {
  readonly area: number;
  /** Sine of its lean from upright. */
  readonly lean: number;
}

function hangingFaces({ positions: p, triangles: t }: TriangleMesh, limit: number): Map<number, Hanging> {
  const found = new Map<number, Hanging>();
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [t[i] * 3, t[i + 1] * 3, t[i + 2] * 3];
    if (Math.max(p[a + 2], p[b + 2], p[c + 2]) < firstLayer) continue;
    const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
    const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
    const down = uy * vx - ux * vy;
    if (!(down > 0)) continue;
    const twice = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, down);
    if (down / twice > limit) found.set(i, { area: twice / 2, lean: down / twice });
  }
  return found;
}

/** Hanging faces that hang together by their edges. */
function patchesOf(mesh: TriangleMesh, hanging: ReadonlyMap<number, Hanging>): Patch[] {
  const across = neighborsOf(mesh, hanging);
  const seen = new Set<number>();
  return [...hanging.keys()].flatMap((first) => {
    if (seen.has(first)) return [];
    seen.add(first);
    const faces = [first];
    const patch: Patch = { area: 0, outline: 0, steepest: 0, largest: 0, place: [0, 0, 0], walled: true };
    for (const face of faces) {
      addFace(patch, mesh, face, hanging.get(face) as Hanging);
      for (const corner of [0, 1, 2]) {
        const next = across(face, corner);
        if (next !== undefined && hanging.has(next)) {
          if (!seen.has(next)) faces.push(next);
          seen.add(next);
        } else addEdge(patch, mesh, face, corner, next);
      }
    }
    return [patch];
  });
}

function addFace(
  patch: Patch,
  { positions: p, triangles: t }: TriangleMesh,
  face: number,
  { area, lean }: Hanging,
) {
  patch.area += area;
  patch.steepest = Math.max(patch.steepest, lean);
  if (area <= patch.largest) return;
  patch.largest = area;
  const middle = (axis: number): number =>
    [0, 1, 2].reduce((sum, k) => sum + p[t[face + k] * 3 + axis] / 3, 0);
  patch.place = [middle(0), middle(1), middle(2)];
}

function addEdge(
  patch: Patch,
  { positions: p, triangles: t }: TriangleMesh,
  face: number,
  corner: number,
  next: number | undefined,
) {
  const [a, b] = [t[face + corner] * 3, t[face + ((corner + 1) % 3)] * 3];
  patch.outline += Math.hypot(p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]);
  const lowest =
    next === undefined ? Number.POSITIVE_INFINITY : Math.min(...[0, 1, 2].map((k) => p[t[next + k] * 3 + 2]));
  if (lowest > Math.min(p[a + 2], p[b + 2]) - level) patch.walled = false;
}

/** The face on the other side of a hanging face's edge. */
function neighborsOf({ positions, triangles: t }: TriangleMesh, hanging: ReadonlyMap<number, Hanging>) {
  const count = positions.length / 3;
  const key = (face: number, corner: number): number =>
    t[face + corner] * count + t[face + ((corner + 1) % 3)];
  const wanted = new Map<number, number | undefined>();
  const reversed = (face: number, corner: number): number =>
    t[face + ((corner + 1) % 3)] * count + t[face + corner];
  for (const face of hanging.keys())
    for (const corner of [0, 1, 2]) wanted.set(reversed(face, corner), undefined);
  for (let face = 0; face < t.length; face += 3)
    for (let corner = 0; corner < 3; corner++) {
      const edge = key(face, corner);
      if (wanted.has(edge)) wanted.set(edge, face);
    }
  return (face: number, corner: number): number | undefined => wanted.get(reversed(face, corner));
}
