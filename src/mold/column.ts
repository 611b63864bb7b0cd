import type { TriangleMesh } from '../geometry/index.ts';

/** Off the corners and edges that masters have at round numbers, mm. */
const aside = [1.7e-6, 2.3e-6] as const;

/** The pieces of an upright line that lie in a closed mesh, from below upward: where each begins and ends, mm. */
export function columnIn(
  { positions, triangles }: TriangleMesh,
  x: number,
  y: number,
): (readonly [number, number])[] {
  const [px, py] = [x + aside[0], y + aside[1]];
  const crossings: { readonly z: number; readonly turn: number }[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * triangles[i + k]);
    const [ax, ay] = [positions[a] - px, positions[a + 1] - py];
    const [bx, by] = [positions[b] - px, positions[b + 1] - py];
    const [cx, cy] = [positions[c] - px, positions[c + 1] - py];
    const [u, v, w] = [bx * cy - by * cx, cx * ay - cy * ax, ax * by - ay * bx];
    if (!((u > 0 && v > 0 && w > 0) || (u < 0 && v < 0 && w < 0))) continue;
    const z = (u * positions[a + 2] + v * positions[b + 2] + w * positions[c + 2]) / (u + v + w);
    // A face that looks down is the floor of a piece.
    crossings.push({ z, turn: u > 0 ? -1 : 1 });
  }
  crossings.sort((one, other) => one.z - other.z);
  const pieces: (readonly [number, number])[] = [];
  let [depth, floor] = [0, 0];
  for (const { z, turn } of crossings) {
    if (depth === 0) floor = z;
    depth += turn;
    if (depth === 0) pieces.push([floor, z]);
  }
  return pieces;
}
