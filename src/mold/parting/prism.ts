import { boundsOf, type TriangleMesh } from '../../geometry/index.ts';
import type { PartingSurface } from '../parting-surface.ts';

/** See `prismUnder`: the cutter of a parting surface. `scope.split(disc, prism)` gives [lower, upper]. */
export const partingPrism = ({ sheet }: PartingSurface, level: number): TriangleMesh =>
  prismUnder(sheet, level);

/**
 * The closed solid between a sheet (single-valued, faces to +z, ending in an upright rectangle, as the networks of
 * this room do) and the plane z = `level` (two triangles), mm: below it with a level below the sheet, else above it.
 * Throws RangeError where the level is within the sheet's heights.
 */
export function prismUnder(sheet: TriangleMesh, level: number): TriangleMesh {
  const { min, max } = boundsOf(sheet.positions);
  const under = level < min[2];
  if (!under && !(level > max[2])) {
    throw new RangeError(`prism: level ${level} is within the sheet's heights ${min[2]} to ${max[2]}`);
  }
  const count = sheet.positions.length / 3;
  const floor = [min[0], min[1], level, max[0], min[1], level, max[0], max[1], level, min[0], max[1], level];
  const faces = [...walls(sheet, count), count, count + 3, count + 2, count, count + 2, count + 1];
  const positions = new Float32Array(sheet.positions.length + floor.length);
  positions.set(sheet.positions);
  positions.set(floor, sheet.positions.length);
  const triangles = new Uint32Array(sheet.triangles.length + faces.length);
  triangles.set(sheet.triangles);
  triangles.set(faces, sheet.triangles.length);
  return { positions, triangles: under ? triangles : flipped(triangles) };
}

/** Fans from the floor's corners (vertices `first` to `first + 3`, counter-clockwise) to the sheet's edge. */
function walls(sheet: TriangleMesh, first: number): number[] {
  const { min, max } = boundsOf(sheet.positions);
  const p = sheet.positions;
  const next = borderOf(sheet);
  const atCorner = (x: number, y: number): number => {
    for (const vertex of next.keys()) if (p[vertex * 3] === x && p[vertex * 3 + 1] === y) return vertex;
    throw new RangeError('prism: the sheet does not end in a rectangle');
  };
  const corners = [
    atCorner(min[0], min[1]),
    atCorner(max[0], min[1]),
    atCorner(max[0], max[1]),
    atCorner(min[0], max[1]),
  ];
  const faces: number[] = [];
  for (let side = 0; side < 4; side++) {
    const [here, there] = [first + side, first + ((side + 1) % 4)];
    const end = corners[(side + 1) % 4];
    for (let vertex = corners[side]; vertex !== end; ) {
      const following = next.get(vertex);
      if (following === undefined) throw new RangeError('prism: the sheet is not one whole piece');
      faces.push(here, following, vertex);
      vertex = following;
    }
    faces.push(here, there, end);
  }
  return faces;
}

/** From each vertex of the sheet's edge the next one, counter-clockwise. */
function borderOf({ positions, triangles }: TriangleMesh): Map<number, number> {
  const { min, max } = boundsOf(positions);
  const onBorder = (vertex: number): boolean => {
    const [x, y] = [positions[vertex * 3], positions[vertex * 3 + 1]];
    return x === min[0] || x === max[0] || y === min[1] || y === max[1];
  };
  const sharesSide = (a: number, b: number): boolean =>
    [0, 1].some((axis) => {
      const [u, v] = [positions[a * 3 + axis], positions[b * 3 + axis]];
      return u === v && (u === min[axis] || u === max[axis]);
    });
  const next = new Map<number, number>();
  for (let face = 0; face < triangles.length; face += 3) {
    for (let k = 0; k < 3; k++) {
      const a = triangles[face + k];
      const b = triangles[face + ((k + 1) % 3)];
      if (onBorder(a) && onBorder(b) && sharesSide(a, b)) next.set(a, b);
    }
  }
  return next;
}

function flipped(triangles: Uint32Array): Uint32Array {
  const over = triangles.slice();
  for (let face = 0; face < over.length; face += 3) {
    over[face] = triangles[face + 1];
    over[face + 1] = triangles[face];
  }
  return over;
}
