import { sidesCrossed } from '../geometry/index.ts';
import { type EdgePairing, pairEdges } from './edge-pairing.ts';
import { PointTable } from './point-table.ts';

/**
 * What an STL file is, found from its bytes alone. Corners are the same vertex only where all three float32 numbers
 * are equal (0 and -0 count as equal). Lengths mm, volume mm3.
 */
export interface Audit {
  readonly triangles: number;
  readonly vertices: number;
  readonly edges: number;
  /** Edges with one face. */
  readonly openEdges: number;
  /** Edges with more than two faces. */
  readonly nonManifoldEdges: number;
  /** Edges whose two faces run along them the same way: one of the two is flipped. */
  readonly flippedEdges: number;
  /** Faces with a repeated vertex or with no area. */
  readonly degenerate: number;
  /** Faces that have the same three vertices as an earlier one, in whatever order. */
  readonly duplicates: number;
  /** Vertices at which separate fans of faces meet in a point: not a surface there. */
  readonly pinchedVertices: number;
  /** Corners with a coordinate that is no finite number. */
  readonly notFinite: number;
  /** Groups of faces joined by edges. */
  readonly shells: number;
  /** Vertices - edges + faces: 2 for each ball, 0 for each ring (Euler's polyhedron formula, 2 - 2 g). */
  readonly euler: number;
  /** Signed, by the divergence theorem: positive where faces are counter-clockwise outside. */
  readonly volume: number;
  readonly area: number;
  readonly bounds: {
    readonly min: readonly [number, number, number];
    readonly max: readonly [number, number, number];
  };
  /** Middle of the first edge or face found at fault, in the file's own frame. */
  readonly faultAt?: readonly [number, number, number];
}

/**
 * Pairs the edges of a binary STL. Shares no code with the writer or the geometry kernel, so that neither's mistake
 * can hide itself. Throws RangeError where the bytes are not a whole binary STL (84 + 50 n of them).
 */
export function auditStl(bytes: Uint8Array): Audit {
  const soup = readCorners(bytes);
  const measures = measure(soup);
  const { vertices, ids } = weld(soup);
  const pairing = pairEdges(ids, vertices, measures.noArea);
  const faultAt = middleOf(soup.corners, pairing);
  return {
    triangles: soup.count,
    vertices,
    edges: pairing.edges,
    openEdges: pairing.open,
    nonManifoldEdges: pairing.nonManifold,
    flippedEdges: pairing.flipped,
    degenerate: pairing.degenerate,
    duplicates: pairing.duplicates,
    pinchedVertices: pairing.pinched,
    notFinite: measures.notFinite,
    shells: pairing.shells,
    euler: vertices - pairing.edges + soup.count - pairing.collapsed,
    volume: measures.volume,
    area: measures.area,
    bounds: measures.bounds,
    ...(faultAt && { faultAt }),
  };
}

/** One or more closed, consistently outward oriented 2-manifold shells round a positive volume, nothing degenerate. */
export const isClosed = (audit: Audit): boolean =>
  audit.triangles > 0 &&
  audit.volume > 0 &&
  audit.openEdges === 0 &&
  audit.nonManifoldEdges === 0 &&
  audit.flippedEdges === 0 &&
  audit.degenerate === 0 &&
  audit.duplicates === 0 &&
  audit.pinchedVertices === 0 &&
  audit.notFinite === 0;

interface Soup {
  readonly count: number;
  /** Nine per face. */
  readonly corners: Float32Array;
}

function readCorners(bytes: Uint8Array): Soup {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = bytes.length >= 84 ? view.getUint32(80, true) : -1;
  if (bytes.length !== 84 + 50 * count)
    throw new RangeError(`auditStl: ${bytes.length} bytes are not a whole binary STL of ${count} faces`);
  const corners = new Float32Array(count * 9);
  for (let face = 0, at = 96, to = 0; face < count; face++, at += 50) {
    // + 0 turns -0 into 0, so that equal corners have equal bits.
    for (let k = 0; k < 36; k += 4) corners[to++] = view.getFloat32(at + k, true) + 0;
  }
  return { count, corners };
}

/** Numbers the distinct corners by their three numbers' bits. */
function weld({ corners }: Soup): { vertices: number; ids: Int32Array } {
  const bits = new Int32Array(corners.buffer);
  const ids = new Int32Array(corners.length / 3);
  const table = new PointTable(ids.length / 4);
  for (let corner = 0, at = 0; corner < ids.length; corner++, at += 3)
    ids[corner] = table.numberOf(bits[at], bits[at + 1], bits[at + 2]);
  return { vertices: table.count, ids };
}

interface Measures {
  readonly volume: number;
  readonly area: number;
  readonly notFinite: number;
  readonly bounds: Audit['bounds'];
  /** 1 for a face without area. Differences and products of float32 are exact in float64, so 0 means collinear. */
  readonly noArea: Uint8Array;
}

function measure({ count, corners: c }: Soup): Measures {
  const noArea = new Uint8Array(count);
  const bounds = boundsOfCorners(c);
  // Volume is summed about the first corner: parts far from the origin lose no digits.
  const [ox, oy, oz] = [c[0], c[1], c[2]];
  let volume = 0;
  let area = 0;
  for (let face = 0, i = 0; face < count; face++, i += 9) {
    const [nx, ny, nz] = sidesCrossed(c, 3 * face, 3 * face + 1, 3 * face + 2);
    if (nx === 0 && ny === 0 && nz === 0) noArea[face] = 1;
    area += Math.sqrt(nx * nx + ny * ny + nz * nz);
    volume += nx * (c[i] - ox) + ny * (c[i + 1] - oy) + nz * (c[i + 2] - oz);
  }
  return { volume: volume / 6, area: area / 2, noArea, ...bounds };
}

function boundsOfCorners(corners: Float32Array): Pick<Measures, 'notFinite' | 'bounds'> {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  let notFinite = 0;
  for (let i = 0; i < corners.length; i += 3) {
    const x = corners[i];
    const y = corners[i + 1];
    const z = corners[i + 2];
    if (!(Number.isFinite(x) && Number.isFinite(y) && Number.isFinite(z))) notFinite++;
    if (x < min[0]) min[0] = x;
    if (x > max[0]) max[0] = x;
    if (y < min[1]) min[1] = y;
    if (y > max[1]) max[1] = y;
    if (z < min[2]) min[2] = z;
    if (z > max[2]) max[2] = z;
  }
  return { notFinite, bounds: { min, max } };
}

function middleOf(corners: Float32Array, { faultCorners }: EdgePairing): Audit['faultAt'] {
  if (faultCorners.length === 0) return undefined;
  const mean = (axis: number): number =>
    faultCorners.reduce((sum, corner) => sum + corners[corner * 3 + axis], 0) / faultCorners.length;
  return [mean(0), mean(1), mean(2)];
}
