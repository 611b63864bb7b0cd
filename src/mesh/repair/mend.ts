import { nextCorner, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type ClosedHoles, closeHoles } from './close-holes.ts';
import { dropCollapsed, dropDoubled } from './drop-faces.ts';
import { type EdgePairs, isPaired, openEdge, pairEdges } from './edges.ts';
import { orientFaces } from './orient.ts';
import { partSheets } from './part-sheets.ts';
import { turnSlivers } from './turn-slivers.ts';
import { weldEqual, weldNear } from './weld.ts';

/** A count of one kind of repair, a size in mm that goes with it, and a place. */
interface Mended {
  readonly count: number;
  readonly size: number;
  readonly place?: Vec3;
}

export interface Mend {
  readonly mesh: TriangleMesh;
  readonly pairs: EdgePairs;
  /** Open edges before anything but joining equal points was done. */
  readonly openBefore: number;
  readonly joined: Mended;
  readonly collapsed: Mended;
  readonly doubled: Mended;
  readonly turned: Mended;
  readonly parted: Mended;
  readonly slivers: Mended;
  readonly holes: ClosedHoles | undefined;
}

const nothing: Mended = { count: 0, size: 0 };

/**
 * Mends a soup of faces: equal points become one, then, only where edges do not pair up, near points on open edges
 * are joined, faces without area and doubled faces left out, faces turned to agree, holes spanned. A mesh whose
 * edges pair up comes back with the same faces in the same order.
 */
export function mend(soup: TriangleMesh, weldTolerance: number, holeLimit: number): Mend {
  const welded = weldUnlessPaired(soup);
  const collapsed = dropCollapsed(welded);
  let mesh = collapsed.mesh;
  let pairs = pairEdges(mesh.triangles, mesh.positions.length / 3);
  const start = {
    openBefore: pairs.open,
    collapsed: mended(collapsed.dropped, 0, collapsed.place),
    joined: nothing,
    doubled: nothing,
    turned: nothing,
    parted: nothing,
    holes: undefined,
  };
  if (isPaired(pairs)) return { ...start, ...withoutSlivers(mesh, pairs) };
  const again = () => pairEdges(mesh.triangles, mesh.positions.length / 3);

  const joined = weldNear(mesh, onOpenEdges(mesh, pairs), weldTolerance);
  const shrunk = dropCollapsed(joined.mesh);
  const doubled = dropDoubled(shrunk.mesh);
  mesh = doubled.mesh;
  pairs = again();
  const oriented = orientFaces(mesh, pairs);
  mesh = oriented.mesh;
  pairs = again();
  const parted = partSheets(mesh, pairs);
  if (parted.parted > 0) {
    mesh = parted.mesh;
    pairs = again();
  }
  const holes = pairs.open > 0 ? closeHoles(mesh, pairs, holeLimit) : undefined;
  if (holes) {
    mesh = holes.mesh;
    pairs = again();
  }
  return {
    ...start,
    ...withoutSlivers(mesh, pairs),
    collapsed: mended(collapsed.dropped + shrunk.dropped, 0, collapsed.place ?? shrunk.place),
    joined: mended(joined.joined, joined.farthest, joined.place),
    doubled: mended(doubled.dropped, 0, doubled.place),
    turned: mended(oriented.turned, 0, oriented.place),
    parted: mended(parted.parted, 0, parted.place),
    holes,
  };
}

function withoutSlivers(mesh: TriangleMesh, pairs: EdgePairs) {
  const { turned, place, ...rest } = turnSlivers(mesh, pairs);
  return { ...rest, slivers: mended(turned, 0, place) };
}

const mended = (count: number, size: number, place: Vec3 | undefined): Mended =>
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

function onOpenEdges({ positions, triangles }: TriangleMesh, { mate }: EdgePairs): Uint8Array {
  const open = new Uint8Array(positions.length / 3);
  for (let h = 0; h < triangles.length; h++) {
    if (mate[h] !== openEdge) continue;
    open[triangles[h]] = 1;
    open[triangles[nextCorner(h)]] = 1;
  }
  return open;
}
