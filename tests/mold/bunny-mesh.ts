import { cells, positions } from 'bunny';
import {
  boundsOf,
  compose,
  moveMesh,
  rotation,
  scaling,
  type TriangleMesh,
  translation,
} from '../../src/geometry/index.ts';

/** The bunny turned upright (its file has y up), scaled to a height in mm, the middle of its box at the origin. */
export function bunny(height: number): TriangleMesh {
  const file = {
    positions: Float32Array.from(positions.flat()),
    triangles: Uint32Array.from(cells.flat()),
  };
  const upright = moveMesh(file, rotation('x', Math.PI / 2));
  const { min, max } = boundsOf(upright.positions);
  const middle = translation(-(min[0] + max[0]) / 2, -(min[1] + max[1]) / 2, -(min[2] + max[2]) / 2);
  return moveMesh(upright, compose(scaling(height / (max[2] - min[2])), middle));
}
