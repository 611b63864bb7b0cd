import { nextCorner, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type ClosedHoles, closeHoles } from './close-holes.ts';
import { dropCollapsed, dropDoubled } from './drop-faces.ts';
import { type EdgePairs, isPaired, openEdge, pairEdges } from './edges.ts';
import { flipSliverEdges } from './flip-slivers.ts';
import { orientFaces } from './orient.ts';
import { splitNonManifoldEdges } from './split-non-manifold.ts';
import { weldEqual, weldNear } from './weld.ts';

/** A count of one kind of repair, a size in mm that goes with it, and a place. */
interface RepairCount {
  readonly count: number;
  readonly size: number;
  readonly place?: Vec3;
}

export interface ClosedTopology {
  readonly mesh: TriangleMesh;
  readonly pairs: EdgePairs;
  /** Open edges before anything but joining equal points was done. */
  readonly openBefore: number;
  readonly joined: RepairCount;
  readonly collapsed: RepairCount;
  readonly doubled: RepairCount;
  readonly reoriented: RepairCount;
  readonly nonManifold: RepairCount;
  readonly slivers: RepairCount;
  readonly holes: ClosedHoles | undefined;
}

const nothing: RepairCount = { count: 0, size: 0 };

/**
 * Closes the topology of a soup of faces: equal points become one, then, only where edges do not pair up, near points on open edges
 * are joined, faces without area and doubled faces left out, faces flipped to agree, holes spanned. A mesh whose
 * edges pair up comes back with the same faces in the same order.
 */
export function closeTopology(soup: TriangleMesh, weldTolerance: number, holeLimit: number): ClosedTopology {
  const welded = weldUnlessPaired(soup);
  const collapsed = dropCollapsed(welded);
  let mesh = collapsed.mesh;
  let pairs = pairEdges(mesh.triangles, mesh.positions.length / 3);
  const start = {
    openBefore: pairs.open,
    collapsed: counted(collapsed.dropped, 0, collapsed.place),
    joined: nothing,
    doubled: nothing,
    reoriented: nothing,
    nonManifold: nothing,
    holes: undefined,
  };
  if (isPaired(pairs)) return { ...start, ...withSliversFlipped(mesh, pairs) };
  const again = () => pairEdges(mesh.triangles, mesh.positions.length / 3);

  const joined = weldNear(mesh, onOpenEdges(mesh, pairs), weldTolerance);
  const shrunk = dropCollapsed(joined.mesh);
  const doubled = dropDoubled(shrunk.mesh);
  mesh = doubled.mesh;
  pairs = again();
  const oriented = orientFaces(mesh, pairs);
  mesh = oriented.mesh;
  pairs = again();
  const split = splitNonManifoldEdges(mesh, pairs);
  if (split.split > 0) {
    mesh = split.mesh;
    pairs = again();
  }
  const holes = pairs.open > 0 ? closeHoles(mesh, pairs, holeLimit) : undefined;
  if (holes) {
    mesh = holes.mesh;
    pairs = again();
  }
  return {
    ...start,
    ...withSliversFlipped(mesh, pairs),
    collapsed: counted(collapsed.dropped + shrunk.dropped, 0, collapsed.place ?? shrunk.place),
    joined: counted(joined.joined, joined.farthest, joined.place),
    doubled: counted(doubled.dropped, 0, doubled.place),
    reoriented: counted(oriented.flipped, 0, oriented.place),
    nonManifold: counted(split.split, 0, split.place),
    holes,
  };
}

function withSliversFlipped(mesh: TriangleMesh, pairs: EdgePairs) {
  const { flipped, place, ...rest } = flipSliverEdges(mesh, pairs);
  return { ...rest, slivers: counted(flipped, 0, place) };
}

const counted = (count: number, size: number, place: Vec3 | undefined): RepairCount =>
  place === undefined ? { count, size } : { count, size, place };

/**
 * Points that a file lists once each and whose faces already pair up are left alone: two bodies may touch in a
 * point on purpose. A soup (three points a face) is always welded.
 */
function weldUnlessPaired(mesh: TriangleMesh): TriangleMesh {
  const vertexCount = mesh.positions.length / 3;
  if (vertexCount < mesh.triangles.length && isPaired(pairEdges(mesh.triangles, vertexCount))) return mesh;
  return weldEqual(mesh);
}

function onOpenEdges({ positions, triangles }: TriangleMesh, { twin }: EdgePairs): Uint8Array {
  const open = new Uint8Array(positions.length / 3);
  for (let h = 0; h < triangles.length; h++) {
    if (twin[h] !== openEdge) continue;
    open[triangles[h]] = 1;
    open[triangles[nextCorner(h)]] = 1;
  }
  return open;
}
