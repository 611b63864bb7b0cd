import { sidesCrossed, type TriangleMesh, triangleCount } from '../geometry/index.ts';

const stlHeaderBytes = 80;
const stlFacetBytes = 50;

/**
 * Binary STL of a mesh: 80 header bytes, uint32 facet count, then per facet the unit normal and three corners as
 * 12 float32 and a uint16 attribute of 0, all little-endian (the published binary STL layout: 84 + 50 n bytes).
 * Corners are the mesh's float32 coordinates bit for bit, in its order; normals follow the right-hand rule and are
 * (0, 0, 0) for a facet without area. STL names no unit: ours is mm.
 * `header`: see `stlHeader`. Throws RangeError on an index outside the mesh.
 */
export function writeStl(mesh: TriangleMesh, header: string): Uint8Array {
  const count = triangleCount(mesh);
  const { positions, triangles } = mesh;
  const bytes = new Uint8Array(stlHeaderBytes + 4 + stlFacetBytes * count);
  bytes.set(stlHeader(header));
  const view = new DataView(bytes.buffer);
  view.setUint32(stlHeaderBytes, count, true);
  const vertices = positions.length / 3;
  let at = stlHeaderBytes + 4;
  for (let i = 0; i < triangles.length; i += 3) {
    if (triangles[i] >= vertices || triangles[i + 1] >= vertices || triangles[i + 2] >= vertices)
      throw new RangeError(`writeStl: facet ${i / 3} names a vertex that is not there`);
    writeFacet(view, at, positions, triangles[i], triangles[i + 1], triangles[i + 2]);
    at += stlFacetBytes;
  }
  return bytes;
}

function writeFacet(view: DataView, at: number, p: Float32Array, a: number, b: number, c: number): void {
  const [nx, ny, nz] = sidesCrossed(p, a, b, c);
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
  const scale = length > 0 ? 1 / length : 0;
  view.setFloat32(at, nx * scale, true);
  view.setFloat32(at + 4, ny * scale, true);
  view.setFloat32(at + 8, nz * scale, true);
  writePoint(view, at + 12, p, a);
  writePoint(view, at + 24, p, b);
  writePoint(view, at + 36, p, c);
}

function writePoint(view: DataView, at: number, p: Float32Array, vertex: number): void {
  for (let axis = 0; axis < 3; axis++) view.setFloat32(at + 4 * axis, p[3 * vertex + axis], true);
}

/**
 * 80 ASCII bytes, padded with spaces; other characters become `?`, the rest is cut. Readers take a file that begins
 * with "solid" for the text variant, so such a header is a programmer's error and throws.
 */
export function stlHeader(text: string): Uint8Array {
  if (/^\s*solid/i.test(text)) throw new RangeError(`stlHeader: "${text}" would be read as a text STL`);
  const bytes = new Uint8Array(stlHeaderBytes).fill(0x20);
  for (const [i, character] of [...text].slice(0, stlHeaderBytes).entries()) {
    const code = character.codePointAt(0) ?? 0x3f;
    bytes[i] = code >= 0x20 && code < 0x7f ? code : 0x3f;
  }
  return bytes;
}
