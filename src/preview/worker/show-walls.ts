import type { Field } from '../../findings/index.ts';
import type { TriangleMesh } from '../../geometry/index.ts';
import type { Kernel } from '../../kernel/index.ts';
import type { Mold } from '../../mold/index.ts';
import type { ShownMaster, ShownWall, ShownWalls } from './messages.ts';
import { mostTriangles, reduce, shownOf } from './reduce.ts';

/**
 * The thickness of the walls at the corners of what is drawn. The field has a value for each vertex of the whole mesh;
 * the reduced one keeps some of these, and a corner it does not find takes the value of the nearest.
 */
export function showWalls(
  { masters, placements }: Mold,
  fields: readonly Field[],
  kernel: Kernel,
): ShownWalls {
  const most = mostTriangles(placements.length);
  const meshes: ShownMaster[] = [];
  const walls: ShownWall[] = [];
  for (const { id, mesh } of masters) {
    const placed = placements.filter(({ master }) => master === id);
    if (placed.length === 0) continue;
    const { reduced, error } = reduce(mesh, most, kernel);
    meshes.push({ id, mesh: shownOf(reduced, error, mesh) });
    const corners = cornersIn(mesh, reduced);
    for (const { id: subject } of placed) {
      const field = fields.find((one) => one.name === 'walls.thickness' && one.subject === subject);
      if (!field) continue;
      const distances = Float32Array.from(corners, (vertex) => field.values[vertex]);
      walls.push({ subject, master: id, distances });
    }
  }
  return { meshes, walls };
}

/** For each corner of the reduced mesh the vertex of the whole one that is there, or is nearest. */
function cornersIn(whole: TriangleMesh, reduced: TriangleMesh): Uint32Array {
  if (whole === reduced) return whole.triangles;
  const key = (p: Float32Array, v: number): string => `${p[3 * v]} ${p[3 * v + 1]} ${p[3 * v + 2]}`;
  const known = new Map<string, number>();
  for (let v = 0; v < whole.positions.length / 3; v++) known.set(key(whole.positions, v), v);
  const vertices = new Uint32Array(reduced.positions.length / 3);
  for (let v = 0; v < vertices.length; v++) {
    vertices[v] = known.get(key(reduced.positions, v)) ?? nearest(whole.positions, reduced.positions, v);
  }
  return reduced.triangles.map((vertex) => vertices[vertex]);
}

function nearest(positions: Float32Array, of: Float32Array, v: number): number {
  const [x, y, z] = [of[3 * v], of[3 * v + 1], of[3 * v + 2]];
  let [found, least] = [0, Number.POSITIVE_INFINITY];
  for (let i = 0; i < positions.length; i += 3) {
    const square = (positions[i] - x) ** 2 + (positions[i + 1] - y) ** 2 + (positions[i + 2] - z) ** 2;
    if (square >= least) continue;
    [found, least] = [i / 3, square];
  }
  return found;
}
