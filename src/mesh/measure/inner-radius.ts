import { Vector3 } from 'three';
import { radPerDegree, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { bvhOf } from './bvh.ts';
import { type EdgeFaces, eachEdge, lengthOf, middleOf } from './edge-faces.ts';

/** Where a hollow is tightest: the radius of the largest ball that fits, mm, and where. */
export interface InnerRadius {
  /** 0 where it is less than the least looked for: it runs in sharp. */
  readonly radius: number;
  readonly place: Vec3;
  /** Length of all edges that run in sharp, mm. */
  readonly sharp: number;
}

export interface BallRange {
  /** Radii between which balls are looked for, mm. */
  readonly least: number;
  readonly most: number;
  /** A ball that stays within this of the edge, mm, fits. */
  readonly finish: number;
}

/** Less of a turn is the flatness of a round shape's facets. */
const leastTurnRad = 1e-3;
/** Cosine, and sine, up to which a floor is level and a wall upright: a degree. */
const [levelCos, uprightSin] = [Math.cos(radPerDegree), Math.sin(radPerDegree)];
const rounds = 50;

/**
 * The largest upright ball end mill for each group of inner edges of a closed mesh seen from above: at each edge the
 * ball that touches nothing and stays within `finish` of the edge's middle, found by shrinking it onto whatever it
 * would cut (Ma, Bae and Choi 2012, "3D medial axis point approximation using nearest neighbors and the normal
 * field"). Its shank is no wider, so what lies open to above lets it in. The foot of an upright wall on a level floor
 * is left out: a square end cuts it. `groupOf` names the group of a place. Groups with nothing tighter than `most` are
 * not in the answer.
 */
export function innerRadii(
  mesh: TriangleMesh,
  { least, most, finish }: BallRange,
  groupOf: (place: Vec3) => string,
): Map<string, InnerRadius> {
  const bvh = bvhOf(mesh);
  const found = new Map<string, InnerRadius>();
  const hit = { point: new Vector3(), distance: 0, faceIndex: 0 };
  const [center, start, normal] = [new Vector3(), new Vector3(), new Vector3()];
  /** Radius of the largest ball no larger than `radius`. */
  const shrunk = (radius: number): number => {
    let r = radius;
    for (let round = 0; round < rounds && r >= least; round++) {
      center.copy(start).addScaledVector(normal, r);
      const near = bvh.closestPointToPoint(center, hit, 0, r * (1 - 1e-4));
      if (!near || near.distance >= r * (1 - 1e-4)) return r;
      const toHit = near.point.clone().sub(start);
      r = Math.min(r * (1 - 1e-4), toHit.lengthSq() / (2 * normal.dot(toHit)));
    }
    return r;
  };
  eachEdge(mesh, (edge) => {
    if (!edge.inner || !open(edge)) return;
    const place = middleOf(mesh.positions, edge.edge);
    const group = groupOf(place);
    const before = found.get(group) ?? { radius: most, place, sharp: 0 };
    const [n, m] = edge.normals;
    normal.set(n[0] + m[0], n[1] + m[1], n[2] + m[2]).normalize();
    start.fromArray(place).addScaledVector(normal, finish);
    const radius = shrunk(Math.max(least, before.radius));
    const sharp = before.sharp + (radius < least ? lengthOf(mesh.positions, edge.edge) : 0);
    if (radius < before.radius) found.set(group, { radius: radius < least ? 0 : radius, place, sharp });
    else if (sharp > before.sharp) found.set(group, { ...before, sharp });
  });
  return found;
}

/** Whether a mill from above comes to an edge, and a square end is not meant to cut it. */
function open({ normals: [n, m], turnRad }: EdgeFaces): boolean {
  if (turnRad < leastTurnRad || Math.min(n[2], m[2]) < -uprightSin) return false;
  const [low, high] = [Math.min(n[2], m[2]), Math.max(n[2], m[2])];
  return !(high > levelCos && low < uprightSin);
}
