import fc from 'fast-check';
import { Sphere, Vector3 } from 'three';
import { ExtendedTriangle } from 'three-mesh-bvh';
import { describe, expect, it } from 'vitest';
import {
  compose,
  type Matrix4,
  movePoint,
  rotation,
  type TriangleMesh,
  translation,
  type Vec3,
} from '../../../src/geometry/index.ts';
import { distanceTree, isInside, meshDistance } from '../../../src/mesh/measure/distance.ts';
import { facePairs } from '../../../src/mesh/measure/face-pairs.ts';
import { box, revolved, single } from '../../revolved-solids.ts';

// The other way to the same number: the library's distance of two faces, over every pair of them. Only those are passed
// over whose balls are farther apart than the nearest found so far.

interface Face {
  readonly face: ExtendedTriangle;
  readonly ball: Sphere;
}

function facesOf({ positions, triangles }: TriangleMesh, matrix: Matrix4): Face[] {
  return Array.from({ length: triangles.length / 3 }, (_, face) => {
    const corners = [0, 1, 2].map((k) => {
      const v = triangles[3 * face + k] * 3;
      return new Vector3(...movePoint(matrix, [positions[v], positions[v + 1], positions[v + 2]]));
    });
    return {
      face: new ExtendedTriangle(...corners),
      ball: new Sphere().setFromPoints(corners),
    };
  });
}

function byAllPairs(facesA: readonly Face[], facesB: readonly Face[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const a of facesA) {
    for (const b of facesB) {
      if (a.ball.center.distanceTo(b.ball.center) - a.ball.radius - b.ball.radius >= least) continue;
      least = Math.min(least, a.face.distanceToTriangle(b.face));
    }
  }
  return least;
}

/** A wavy ring: the nearest points of two of them are seldom found by going back and forth between them. */
const circle = (radius: number, count: number): (readonly [number, number])[] =>
  Array.from({ length: count }, (_, i) => [
    9 + radius * Math.cos((2 * Math.PI * i) / count),
    radius * Math.sin((2 * Math.PI * i) / count),
  ]);

function wavy({ positions, triangles }: TriangleMesh): TriangleMesh {
  const moved = positions.map((value, i) => {
    const turn = Math.atan2(positions[i - (i % 3) + 1], positions[i - (i % 3)]);
    return value * (1 + 0.12 * Math.sin(7 * turn + i));
  });
  return { positions: moved, triangles };
}

const bodies = {
  ring: wavy(single(revolved(circle(3, 8), 24))),
  rod: single(box([-6, -1, -0.5], [6, 1, 0.5])),
  lentil: wavy(
    single(
      revolved(
        Array.from({ length: 9 }, (_, i): [number, number] => [
          i % 8 === 0 ? 0 : 6 * Math.sin((Math.PI * i) / 8),
          -2 * Math.cos((Math.PI * i) / 8),
        ]),
        20,
      ),
    ),
  ),
};

const turn = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
const way = fc.double({ min: -14, max: 14, noNaN: true });
const pose = fc
  .tuple(turn, turn, way, way, way)
  .map(([about, over, x, y, z]) => compose(translation(x, y, z), rotation('z', about), rotation('x', over)));
const body = fc.constantFrom<keyof typeof bodies>('ring', 'rod', 'lentil');

describe('mesh distance', () => {
  it('is that of all pairs of faces at any pose, apart or crossing', () => {
    fc.assert(
      fc.property(body, body, pose, pose, (one, other, atA, atB) => {
        const [a, b] = [bodies[one], bodies[other]];
        const answer = meshDistance(distanceTree(a, atA), distanceTree(b, atB), 1e6);
        if ('beyond' in answer) throw new Error('nothing is beyond that');
        const { distance, pointA, pointB } = answer;
        const wanted = byAllPairs(facesOf(a, atA), facesOf(b, atB));
        // One wholly inside the other has 0, which the faces do not know.
        const isNested = [
          [a, atA, pointA],
          [b, atB, pointB],
        ] as const;
        if (distance === 0 && wanted > 1e-9)
          expect(isNested.some(([mesh, at, point]) => isInside(distanceTree(mesh, at), point))).toBe(true);
        else expect(Math.abs(distance - wanted)).toBeLessThan(1e-6);
        const [dx, dy, dz] = [0, 1, 2].map((axis) => pointA[axis] - pointB[axis]);
        if (wanted > 1e-6) expect(Math.abs(Math.hypot(dx, dy, dz) - distance)).toBeLessThan(1e-6);
      }),
      { numRuns: 150, seed: 7 },
    );
  });
});

describe('pairs of faces', () => {
  const unit = fc.tuple(turn, fc.double({ min: -1, max: 1, noNaN: true })).map(([about, z]): Vec3 => {
    const r = Math.sqrt(1 - z * z);
    return [r * Math.cos(about), r * Math.sin(about), z];
  });
  const within = fc.double({ min: 0.1, max: 8, noNaN: true });

  it('are all visited that are nearer than asked, whatever the direction they are looked at along', () => {
    fc.assert(
      fc.property(pose, unit, within, (fromB, along, limit) => {
        const { faces } = distanceTree(bodies.lentil);
        const seen = new Set<string>();
        facePairs(
          faces,
          faces,
          { fromB, along },
          () => limit,
          (i, k) => seen.add(`${i} ${k}`),
        );
        // In the tree's own order of faces.
        const inOrder: TriangleMesh = {
          positions: Float32Array.from(faces.corners),
          triangles: Uint32Array.from({ length: faces.corners.length / 3 }, (_, i) => i),
        };
        const identity = compose();
        const [as, bs] = [facesOf(inOrder, identity), facesOf(inOrder, fromB)];
        for (const [i, a] of as.entries()) {
          for (const [k, b] of bs.entries()) {
            if (a.ball.center.distanceTo(b.ball.center) - a.ball.radius - b.ball.radius >= limit) continue;
            if (seen.has(`${i} ${k}`)) continue;
            expect(a.face.distanceToTriangle(b.face)).toBeGreaterThan(limit - 1e-9);
          }
        }
      }),
      { numRuns: 20, seed: 5 },
    );
  });
});
