import { joinMeshes, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type Kernel, KernelFault } from '../../kernel/index.ts';
import { boxesMeet, type Shells, shellMesh } from './shells.ts';
import { isTangled } from './tangled.ts';

export interface United {
  readonly mesh: TriangleMesh;
  /** Shells that overlapped and became one skin; 0 where none did and the mesh is untouched. */
  readonly united: number;
  /** Volume that was counted more than once, mm3. */
  readonly overlap: number;
  readonly place?: Vec3;
}

/** Volumes closer than this share are the same: the kernel rounds coordinates to float32. */
const sameVolume = 1e-6;

/**
 * Unites shells that overlap: outward shells are added, then cavities are cut out again. Only shells whose boxes
 * meet go to the kernel, and where the volume does not change by it, nothing overlapped and the mesh is handed
 * back as it was. Throws KernelFault where the kernel cannot take a shell.
 */
export function uniteShells(mesh: TriangleMesh, shells: Shells, kernel: Kernel): United {
  const clusters = clustersOf(shells).filter((cluster) => cluster.length > 1);
  if (clusters.length === 0) return { mesh, united: 0, overlap: 0 };
  if (isTangled(mesh)) throw new KernelFault('the master', 'its faces cross one another too often');
  const whole = new Map<number, TriangleMesh>();
  const merged: TriangleMesh[] = [];
  let united = 0;
  let overlap = 0;
  let place: Vec3 | undefined;
  for (const cluster of clusters) {
    const outcome = uniteCluster(mesh, shells, cluster, kernel);
    if (outcome === undefined) continue;
    for (const shell of cluster) whole.set(shell, outcome.mesh);
    merged.push(outcome.mesh);
    united += cluster.length;
    overlap += outcome.overlap;
    place ??= outcome.place;
  }
  if (place === undefined) return { mesh, united: 0, overlap: 0 };
  return { mesh: replaceShells(mesh, shells, whole, merged), united, overlap, place };
}

/** Groups of shells linked by meeting boxes. */
function clustersOf({ count, bounds }: Shells): number[][] {
  const group = Array.from({ length: count }, (_, shell) => shell);
  const top = (shell: number): number => {
    let at = shell;
    while (group[at] !== at) at = group[at];
    return at;
  };
  // Sorted by left side, so that only neighbours along x are compared.
  const order = [...bounds.keys()].sort((a, b) => bounds[a].min[0] - bounds[b].min[0] || a - b);
  for (let i = 0; i < order.length; i++) {
    for (let j = i + 1; j < order.length && bounds[order[j]].min[0] <= bounds[order[i]].max[0]; j++) {
      if (boxesMeet(bounds[order[i]], bounds[order[j]])) group[top(order[j])] = top(order[i]);
    }
  }
  const clusters = new Map<number, number[]>();
  for (let shell = 0; shell < count; shell++) {
    const members = clusters.get(top(shell));
    if (members) members.push(shell);
    else clusters.set(top(shell), [shell]);
  }
  return [...clusters.values()];
}

function uniteCluster(mesh: TriangleMesh, shells: Shells, cluster: readonly number[], kernel: Kernel) {
  return kernel.scope((scope) => {
    const bodies = (shellNumbers: readonly number[], insideOut: boolean) =>
      shellNumbers.map((shell) =>
        scope.fromExactMesh(shellMesh(mesh, shells, shell, insideOut), 'a shell of the master'),
      );
    const outward = cluster.filter((shell) => shells.volumes[shell] > 0);
    const inward = cluster.filter((shell) => shells.volumes[shell] <= 0);
    if (outward.length === 0) throw new KernelFault('the master', 'no shell faces outward');
    const outer = scope.unite(bodies(outward, false), 'the united shells');
    const body = scope.subtract(outer, bodies(inward, true), 'the united shells');
    const before = cluster.reduce((sum, shell) => sum + shells.volumes[shell], 0);
    const overlap = before - body.volume();
    const gross = cluster.reduce((sum, shell) => sum + Math.abs(shells.volumes[shell]), 0);
    if (Math.abs(overlap) <= sameVolume * gross) return undefined;
    return { mesh: scope.toMesh(body), overlap, place: placeOf(shells, cluster) };
  });
}

/** Middle of the common box of the first two shells whose boxes meet. */
function placeOf({ bounds }: Shells, cluster: readonly number[]): Vec3 {
  for (const a of cluster) {
    for (const b of cluster) {
      if (a >= b || !boxesMeet(bounds[a], bounds[b])) continue;
      const at = (axis: number): number =>
        (Math.max(bounds[a].min[axis], bounds[b].min[axis]) +
          Math.min(bounds[a].max[axis], bounds[b].max[axis])) /
        2;
      return [at(0), at(1), at(2)];
    }
  }
  return bounds[cluster[0]].min;
}

/** The shells not in `whole` as they were, then the united meshes. */
function replaceShells(
  mesh: TriangleMesh,
  shells: Shells,
  whole: ReadonlyMap<number, TriangleMesh>,
  merged: readonly TriangleMesh[],
): TriangleMesh {
  const rest: number[] = [];
  for (let face = 0; face < shells.of.length; face++) {
    if (whole.has(shells.of[face])) continue;
    for (let h = face * 3; h < face * 3 + 3; h++) rest.push(mesh.triangles[h]);
  }
  const kept = weldedPart(mesh, rest);
  return joinMeshes(kept.triangles.length > 0 ? [kept, ...merged] : merged);
}

/** Only the points that the given faces use. */
function weldedPart({ positions }: TriangleMesh, faces: readonly number[]): TriangleMesh {
  const number = new Map<number, number>();
  const points: number[] = [];
  const triangles = faces.map((v) => {
    const known = number.get(v);
    if (known !== undefined) return known;
    points.push(positions[v * 3], positions[v * 3 + 1], positions[v * 3 + 2]);
    number.set(v, number.size);
    return number.size - 1;
  });
  return { positions: Float32Array.from(points), triangles: Uint32Array.from(triangles) };
}
