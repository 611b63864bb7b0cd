import modeling from '@jscad/modeling';
import { serializeBinary } from '@jscad/stl-serializer/CSGToStlb.js';
import type { TriangleMesh } from '../geometry/index.ts';
import { stlHeader } from './stl.ts';

/**
 * Binary STL through `@jscad/stl-serializer`, for small solids. Coordinates are the mesh's float32 bit for bit.
 *
 * Measured with version 2.1.23 (tests/export/stl-jscad.test.ts keeps the first two true):
 * - its public `serialize` snaps every corner to a grid of a hundred-thousandth of the solid's mean extent: on a
 *   250 mm disc of 992 facets it moves 7 896 of 8 928 coordinates, by up to 0.0008 mm. It is not exact but for
 *   solids that lie on that grid anyway, so it is not used;
 * - the binary writer under it (`CSGToStlb`) neither snaps nor splits, and gives every coordinate back exactly;
 * - it makes an object of every facet and corner: 0.4 ms at 2 000 facets, but 1 - 2 s and 0.4 GB at a million, where
 *   `writeStl` needs 0.07 s. Hence only small solids take this way.
 * Its 80 header bytes (the letter A) are replaced by ours.
 */
export function writeSmallStl(mesh: TriangleMesh, header: string): Uint8Array {
  const { geom3, poly3 } = modeling.geometries;
  const { positions, triangles } = mesh;
  const corner = (index: number): [number, number, number] => {
    const at = triangles[index] * 3;
    if (at >= positions.length) throw new RangeError(`writeSmallStl: no vertex ${triangles[index]}`);
    return [positions[at], positions[at + 1], positions[at + 2]];
  };
  const facets = Array.from({ length: triangles.length / 3 }, (_, i) =>
    poly3.create([corner(3 * i), corner(3 * i + 1), corner(3 * i + 2)]),
  );
  const [, count, body] = serializeBinary([geom3.create(facets)], {});
  const bytes = new Uint8Array(84 + body.byteLength);
  bytes.set(stlHeader(header));
  bytes.set(new Uint8Array(count), 80);
  bytes.set(new Uint8Array(body), 84);
  return bytes;
}
