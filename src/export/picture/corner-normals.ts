import { type TriangleMesh, toRadians } from '../../geometry/index.ts';

/**
 * A normal for each corner (nine numbers a face): the mean, weighted by area, of the faces round that vertex whose
 * normals are within 40 degrees of the face's own. So round things look round and edges stay sharp. A face without
 * area gets (0, 0, 0).
 */
export function cornerNormals(mesh: TriangleMesh): Float32Array {
  const faces = faceNormals(mesh);
  const { starts, around } = facesRound(mesh);
  const { triangles } = mesh;
  const normals = new Float32Array(triangles.length * 3);
  const withinCrease = Math.cos(toRadians(40));
  for (let corner = 0; corner < triangles.length; corner++) {
    const own = Math.floor(corner / 3) * 4;
    let x = 0;
    let y = 0;
    let z = 0;
    const vertex = triangles[corner];
    for (let k = starts[vertex]; k < starts[vertex + 1]; k++) {
      const other = around[k] * 4;
      const cosine =
        faces[own] * faces[other] + faces[own + 1] * faces[other + 1] + faces[own + 2] * faces[other + 2];
      if (cosine < withinCrease) continue;
      x += faces[other] * faces[other + 3];
      y += faces[other + 1] * faces[other + 3];
      z += faces[other + 2] * faces[other + 3];
    }
    const length = Math.hypot(x, y, z);
    if (length === 0) continue;
    normals[corner * 3] = x / length;
    normals[corner * 3 + 1] = y / length;
    normals[corner * 3 + 2] = z / length;
  }
  return normals;
}

/** Unit normal and doubled area of each face. */
function faceNormals({ positions: p, triangles }: TriangleMesh): Float64Array {
  const out = new Float64Array((triangles.length / 3) * 4);
  for (let i = 0, to = 0; i < triangles.length; i += 3, to += 4) {
    const [a, b, c] = [triangles[i] * 3, triangles[i + 1] * 3, triangles[i + 2] * 3];
    const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
    const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
    const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const length = Math.hypot(x, y, z);
    if (length === 0) continue;
    out[to] = x / length;
    out[to + 1] = y / length;
    out[to + 2] = z / length;
    out[to + 3] = length;
  }
  return out;
}

/** The faces round each vertex v: around[starts[v]] up to around[starts[v + 1]]. */
function facesRound({ positions, triangles }: TriangleMesh): { starts: Uint32Array; around: Uint32Array } {
  const starts = new Uint32Array(positions.length / 3 + 1);
  for (const vertex of triangles) starts[vertex + 1]++;
  for (let v = 1; v < starts.length; v++) starts[v] += starts[v - 1];
  const next = starts.slice();
  const around = new Uint32Array(triangles.length);
  for (let corner = 0; corner < triangles.length; corner++) {
    around[next[triangles[corner]]++] = Math.floor(corner / 3);
  }
  return { starts, around };
}
