import fc from 'fast-check';
import { Vector3 } from 'three';
import { ExtendedTriangle } from 'three-mesh-bvh';
import { describe, expect, it } from 'vitest';
import {
  compose,
  type Matrix4,
  movePoint,
  rotation,
  type TriangleMesh,
  translation,
} from '../../../src/kernel/index.ts';
import { distanceTree, isInside, meshDistance } from '../../../src/mesh/measure/distance.ts';
import { ball, box, revolved, single } from '../../turned-solids.ts';

const far = 1e6;

describe('mesh distance against all pairs of faces', () => {
  // The other way to the same number: the library's distance of two faces, over every pair of them.
  const byAllPairs = (a: TriangleMesh, atA: Matrix4, b: TriangleMesh, atB: Matrix4): number => {
    const [facesA, facesB] = [facesOf(a, atA), facesOf(b, atB)];
    return Math.min(
      ...facesA.map((one) => Math.min(...facesB.map((other) => one.distanceToTriangle(other)))),
    );
  };
  const facesOf = ({ positions, triangles }: TriangleMesh, matrix: Matrix4): ExtendedTriangle[] =>
    Array.from({ length: triangles.length / 3 }, (_, face) => {
      const corner = (k: number) => {
        const v = triangles[3 * face + k] * 3;
        return new Vector3(...movePoint(matrix, [positions[v], positions[v + 1], positions[v + 2]]));
      };
      return new ExtendedTriangle(corner(0), corner(1), corner(2));
    });
  const ring = single(
    revolved(
      Array.from({ length: 6 }, (_, i): [number, number] => [
        9 + 3 * Math.cos((Math.PI * i) / 3),
        2 * Math.sin((Math.PI * i) / 3),
      ]),
      10,
    ),
  );
  const bodies = {
    ring,
    rod: single(box([-6, -1, -0.5], [6, 1, 0.5])),
    ball: single(ball(4, [0, 0, 0], 5, 8)),
  };
  const turn = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
  const way = fc.double({ min: -16, max: 16, noNaN: true });
  const pose = fc
    .tuple(turn, turn, way, way, way)
    .map(([about, over, x, y, z]) =>
      compose(translation(x, y, z), rotation('z', about), rotation('x', over)),
    );
  const body = fc.constantFrom<keyof typeof bodies>('ring', 'rod', 'ball');

  it('is the same at any pose, apart or crossing', () => {
    fc.assert(
      fc.property(body, body, pose, pose, (one, other, atA, atB) => {
        const [a, b] = [bodies[one], bodies[other]];
        const answer = meshDistance(distanceTree(a, atA), distanceTree(b, atB), far);
        if ('beyond' in answer) throw new Error('nothing is beyond that');
        const { distance, pointA, pointB } = answer;
        const wanted = byAllPairs(a, atA, b, atB);
        // One wholly inside the other has 0, which the faces do not know.
        if (distance > 0 || wanted < 1e-9) expect(Math.abs(distance - wanted)).toBeLessThan(1e-6);
        else
          expect(isInside(distanceTree(b, atB), pointA) || isInside(distanceTree(a, atA), pointA)).toBe(true);
        const [dx, dy, dz] = [0, 1, 2].map((axis) => pointA[axis] - pointB[axis]);
        if (wanted > 1e-9) expect(Math.abs(Math.hypot(dx, dy, dz) - distance)).toBeLessThan(1e-6);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});
