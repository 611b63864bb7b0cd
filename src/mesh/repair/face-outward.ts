import { type Bounds, boundsOf, midpoint, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import type { EdgePairs } from './edges.ts';
import { flipFaces } from './orient.ts';
import { findShells, type Shells, shellMesh } from './shells.ts';
import { faceVolume } from './surface.ts';
import { TriangleTree } from './triangle-tree.ts';

export interface FacedOutward {
  readonly mesh: TriangleMesh;
  readonly shells: Shells;
  /** Shells turned inside out, and the middle of the first of them. */
  readonly flipped: number;
  readonly place?: Vec3;
  /** Inward shells that lie inside a body and so stay as they are: closed cavities. */
  readonly cavities: number;
}

/**
 * Turns shells that face inward. A shell facing inward inside a body is that body's cavity and stays; where the
 * outer body itself is inside out, it is turned together with all that lies in it. A mesh with open edges has no
 * inside to go by: its shells keep the way the file gives them, or all are turned where together they face inward.
 */
export function faceOutward(mesh: TriangleMesh, pairs: EdgePairs): FacedOutward {
  const shells = findShells(mesh, pairs);
  if (pairs.open + pairs.nonManifold > 0) return faceOpenOutward(mesh, shells);
  if (shells.volumes.every((volume) => volume >= 0)) return { mesh, shells, flipped: 0, cavities: 0 };
  const within = nesting(mesh, shells);
  const sign = [...shells.volumes].map((volume): number => (volume < 0 ? -1 : 1));
  const flip = new Set<number>();
  let cavities = 0;
  // From the largest to the smallest: what encloses a shell is settled before the shell is.
  const order = [...shells.volumes.keys()].sort(
    (a, b) => Math.abs(shells.volumes[b]) - Math.abs(shells.volumes[a]) || a - b,
  );
  for (const shell of order) {
    const around = within(shell);
    const outermost = around.find((outer) => flip.has(outer) && within(outer).length === 0);
    if (outermost !== undefined) {
      flip.add(shell);
      sign[shell] = -sign[shell];
    }
    if (sign[shell] > 0) continue;
    if (around.reduce((depth, outer) => depth + sign[outer], 0) > 0) {
      cavities++;
    } else {
      sign[shell] = 1;
      if (flip.has(shell)) flip.delete(shell);
      else flip.add(shell);
    }
  }
  if (flip.size === 0) return { mesh, shells, flipped: 0, cavities };
  const side = new Int8Array(shells.of.length).fill(1);
  for (let face = 0; face < side.length; face++) if (flip.has(shells.of[face])) side[face] = -1;
  const faced = flipFaces(mesh, side).mesh;
  const place = middle(shells.bounds[Math.min(...flip)]);
  return {
    mesh: faced,
    shells: { ...shells, volumes: shells.volumes.map((volume, s) => (flip.has(s) ? -volume : volume)) },
    flipped: flip.size,
    place,
    cavities,
  };
}

function faceOpenOutward(mesh: TriangleMesh, shells: Shells): FacedOutward {
  const box = boundsOf(mesh.positions);
  let volume = 0;
  for (let face = 0; face < shells.of.length; face++) {
    volume += faceVolume(mesh.positions, mesh.triangles, face, middle(box));
  }
  if (volume >= 0) return { mesh, shells, flipped: 0, cavities: 0 };
  const faced = flipFaces(mesh, new Int8Array(shells.of.length).fill(-1)).mesh;
  return {
    mesh: faced,
    shells: { ...shells, volumes: shells.volumes.map((one) => -one) },
    flipped: shells.count,
    place: middle(box),
    cavities: 0,
  };
}

/** For each shell, the larger shells round it (largest first), worked out when asked. */
function nesting(mesh: TriangleMesh, shells: Shells): (shell: number) => number[] {
  const bySize = [...shells.volumes.keys()].sort(
    (a, b) => Math.abs(shells.volumes[b]) - Math.abs(shells.volumes[a]) || a - b,
  );
  const trees = new Map<number, TriangleTree>();
  const answers = new Map<number, number[]>();
  const treeOf = (shell: number): TriangleTree => {
    const tree = trees.get(shell) ?? new TriangleTree(shellMesh(mesh, shells, shell));
    trees.set(shell, tree);
    return tree;
  };
  return (shell) => {
    const known = answers.get(shell);
    if (known) return known;
    const around = bySize
      .slice(0, bySize.indexOf(shell))
      .filter(
        (outer) =>
          boxHolds(shells.bounds[outer], shells.bounds[shell]) &&
          mostlyInside(treeOf(outer), shellMesh(mesh, shells, shell).positions),
      );
    answers.set(shell, around);
    return around;
  };
}

/** Judged by a few points: one of them may lie on the other surface. */
function mostlyInside(tree: TriangleTree, positions: Float32Array): boolean {
  const count = positions.length / 3;
  const asked = Math.min(count, 7);
  let inside = 0;
  for (let n = 0; n < asked; n++) {
    const i = Math.floor((n * count) / asked) * 3;
    if (Math.abs(tree.windingAt(positions[i], positions[i + 1], positions[i + 2])) > 0.5) inside++;
  }
  return inside * 2 > asked;
}

const boxHolds = (outer: Bounds, inner: Bounds): boolean =>
  [0, 1, 2].every((axis) => outer.min[axis] <= inner.min[axis] && inner.max[axis] <= outer.max[axis]);

const middle = ({ min, max }: Bounds): Vec3 => midpoint(min, max);
