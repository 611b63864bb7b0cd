import { type Crossing, crossingFaces, type TriangleMesh } from '../../geometry/index.ts';
import { type CutOut, cutFaces } from './cut-crossings.ts';
import { areaVector, sizeOf } from './surface.ts';

/** What was done about faces that go through one another. */
export interface MendedCrossings {
  readonly mesh: TriangleMesh;
  readonly cuts: readonly CutOut[];
  /** Points moved, and the farthest (mm) any was. */
  readonly moved: number;
  readonly farthest: number;
  /** What no step could part. */
  readonly left: readonly Crossing[];
}

/** One way to part faces: points drawn toward their neighbors' middle so many times, or faces cut out; `rings` of faces about. */
interface Step {
  readonly smooth: number;
  readonly rings: number;
}

/** Mildest first. */
const steps: readonly Step[] = [
  { smooth: 2, rings: 0 },
  { smooth: 0, rings: 0 },
  { smooth: 0, rings: 1 },
  { smooth: 8, rings: 1 },
  { smooth: 0, rings: 2 },
  { smooth: 0, rings: 4 },
];
/** Faces that only touch, or cross by less than the kernel's own tolerance (mm), are a master's as it is: solids are parted by themselves. */
const shallow = 1e-4;
const isDeep = ({ depth }: Crossing): boolean => depth > shallow;
/** All a mesh may cost: each is a look at every face. */
const mostTries = 12;
/** Where more places are at fault, the surface is no skin with a few folds. */
const mostCrossings = 2000;
/** Share of the surface that may be cut out and spanned anew. */
const cutShare = 0.02;
/** Points are moved no farther than this share of the box diagonal: 0.06 mm on 30 mm. */
const moveShare = 0.002;

/**
 * Parts faces that go through one another, step by step, until none do or the steps are used up. A step stays only
 * where fewer cross after it and `prove` (which gives the mesh that came of the proof) still finds a solid. A mesh
 * whose faces do not cross comes back as it is.
 */
export function mendCrossings(
  mesh: TriangleMesh,
  { holeLimit, diagonal }: { readonly holeLimit: number; readonly diagonal: number },
  prove: (mesh: TriangleMesh) => TriangleMesh | undefined,
): MendedCrossings {
  let best: MendedCrossings = {
    mesh,
    cuts: [],
    moved: 0,
    farthest: 0,
    left: crossingFaces(mesh, mostCrossings),
  };
  let step = 0;
  for (let tries = 0; tries < mostTries && step < steps.length; tries++) {
    if (!best.left.some(isDeep) || best.left.length >= mostCrossings) break;
    const next = takeStep(best, steps[step], holeLimit, moveShare * diagonal);
    const proven = next && prove(next.mesh);
    const left = proven && crossingFaces(proven, best.left.length);
    if (left && left.length < best.left.length) best = { ...next, mesh: proven, left };
    else step++;
  }
  return { ...best, left: best.left.filter(isDeep) };
}

/** The mesh after a step, with what was done to it in all; none where the step would change too much. */
function takeStep(
  { mesh, left, cuts, moved, farthest }: MendedCrossings,
  { smooth, rings }: Step,
  holeLimit: number,
  farthestMove: number,
): Omit<MendedCrossings, 'left'> | undefined {
  const marked = facesAbout(mesh, left, rings);
  if (smooth > 0) {
    const smoothed = drawnTogether(mesh, marked, smooth);
    if (smoothed.farthest > farthestMove) return undefined;
    const most = Math.max(farthest, smoothed.farthest);
    return { mesh: smoothed.mesh, cuts, moved: moved + smoothed.moved, farthest: most };
  }
  if (areaOf(mesh, marked) > cutShare * sizeOf(mesh).area) return undefined;
  const cut = cutFaces(
    mesh,
    marked.map((flag) => 1 - flag),
    holeLimit,
  );
  return cut && { mesh: cut.mesh, cuts: [...cuts, cut], moved, farthest };
}

/** 1 for the faces that cross and `rings` of faces round them. */
function facesAbout(
  { positions, triangles }: TriangleMesh,
  crossings: readonly Crossing[],
  rings: number,
): Uint8Array {
  const marked = new Uint8Array(triangles.length / 3);
  for (const { through, by } of crossings) {
    marked[through] = 1;
    marked[by] = 1;
  }
  for (let ring = 0; ring < rings; ring++) {
    const touched = new Uint8Array(positions.length / 3);
    for (let h = 0; h < triangles.length; h++) if (marked[Math.floor(h / 3)] === 1) touched[triangles[h]] = 1;
    for (let h = 0; h < triangles.length; h++) if (touched[triangles[h]] === 1) marked[Math.floor(h / 3)] = 1;
  }
  return marked;
}

function areaOf({ positions, triangles }: TriangleMesh, marked: Uint8Array): number {
  let area = 0;
  for (let face = 0; face < marked.length; face++) {
    if (marked[face] === 1) area += Math.hypot(...areaVector(positions, triangles, face));
  }
  return area;
}

/** Draws the corners of the marked faces half way to the middle of their neighbors, `times` times. */
function drawnTogether(mesh: TriangleMesh, marked: Uint8Array, times: number) {
  const around = neighborsOf(mesh, marked);
  const positions = mesh.positions.slice();
  for (let time = 0; time < times; time++) {
    const before = positions.slice();
    for (const [vertex, neighbors] of around) {
      for (let axis = 0; axis < 3; axis++) {
        let sum = 0;
        for (const neighbor of neighbors) sum += before[neighbor * 3 + axis];
        positions[vertex * 3 + axis] = (before[vertex * 3 + axis] + sum / neighbors.size) / 2;
      }
    }
  }
  let farthest = 0;
  for (const vertex of around.keys()) {
    const by = [0, 1, 2].map((axis) => positions[vertex * 3 + axis] - mesh.positions[vertex * 3 + axis]);
    farthest = Math.max(farthest, Math.hypot(...by));
  }
  return { mesh: { positions, triangles: mesh.triangles }, moved: around.size, farthest };
}

/** The corners of marked faces, each with the vertices it has an edge to. */
function neighborsOf({ triangles }: TriangleMesh, marked: Uint8Array): Map<number, Set<number>> {
  const around = new Map<number, Set<number>>();
  for (let h = 0; h < triangles.length; h++)
    if (marked[Math.floor(h / 3)] === 1) around.set(triangles[h], new Set());
  for (let face = 0; face < triangles.length; face += 3) {
    for (let k = 0; k < 3; k++) {
      const neighbors = around.get(triangles[face + k]);
      neighbors?.add(triangles[face + ((k + 1) % 3)]).add(triangles[face + ((k + 2) % 3)]);
    }
  }
  return around;
}
