// Masters for the parting surface, made from formulas alone: closed, oriented outward, mm.

import {
  compose,
  type Matrix4,
  moveMesh,
  rotation,
  type TriangleMesh,
  translation,
} from '../../src/geometry/index.ts';
import { bunny } from './bunny-mesh.ts';

type Point = readonly [number, number, number];

/** Rings of equally many points, closed by a point at each end. */
function rings(start: Point, middle: readonly (readonly Point[])[], end: Point): TriangleMesh {
  const n = middle[0].length;
  const points = [start, ...middle.flat(), end];
  const last = points.length - 1;
  const at = (ring: number, k: number): number => 1 + ring * n + (k % n);
  const faces: number[] = [];
  for (let k = 0; k < n; k++) {
    faces.push(0, at(0, k + 1), at(0, k));
    for (let ring = 0; ring + 1 < middle.length; ring++) {
      faces.push(at(ring, k), at(ring, k + 1), at(ring + 1, k + 1));
      faces.push(at(ring, k), at(ring + 1, k + 1), at(ring + 1, k));
    }
    faces.push(last, at(middle.length - 1, k), at(middle.length - 1, k + 1));
  }
  return { positions: Float32Array.from(points.flat()), triangles: Uint32Array.from(faces) };
}

/** An ellipsoid about the origin with semi-axes a, b, c along x, y, z. */
export function ellipsoid(a: number, b: number, c: number, n = 96): TriangleMesh {
  const middle = Array.from({ length: n / 2 - 1 }, (_, ring) => {
    const polar = (Math.PI * (ring + 1)) / (n / 2);
    return Array.from({ length: n }, (_, k): Point => {
      const turn = (2 * Math.PI * (k + 0.31)) / n;
      return [
        a * Math.sin(polar) * Math.cos(turn),
        b * Math.sin(polar) * Math.sin(turn),
        -c * Math.cos(polar),
      ];
    });
  });
  return rings([0, 0, -c], middle, [0, 0, c]);
}

/** A torus about the z axis, centre circle in z = 0. */
export function torus(major: number, minor: number, n = 128, m = 48): TriangleMesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  const at = (i: number, j: number): number => (i % n) * m + (j % m);
  for (let i = 0; i < n; i++) {
    const u = (2 * Math.PI * (i + 0.37)) / n;
    for (let j = 0; j < m; j++) {
      const v = (2 * Math.PI * (j + 0.21)) / m;
      const r = major + minor * Math.cos(v);
      positions.push(r * Math.cos(u), r * Math.sin(u), minor * Math.sin(v));
      triangles.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j), at(i + 1, j + 1), at(i, j + 1));
    }
  }
  return { positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** A round rod of the given radius along a path in the plane y = 0 given as (x, z) at t in 0..1, with round ends. */
export function rod(
  path: (t: number) => readonly [number, number],
  radius: number,
  n = 32,
  m = 80,
): TriangleMesh {
  const frame = (t: number): { centre: Point; along: Point; side: Point } => {
    const [x, z] = path(t);
    const [ax, az] = path(Math.max(0, t - 1e-3));
    const [bx, bz] = path(Math.min(1, t + 1e-3));
    const length = Math.hypot(bx - ax, bz - az);
    const along: Point = [(bx - ax) / length, 0, (bz - az) / length];
    return { centre: [x, 0, z], along, side: [-along[2], 0, along[0]] };
  };
  const ring = (t: number, shift: number, r: number): Point[] => {
    const { centre, along, side } = frame(t);
    return Array.from({ length: n }, (_, k): Point => {
      const turn = (-2 * Math.PI * (k + 0.17)) / n;
      const [c, s] = [r * Math.cos(turn), r * Math.sin(turn)];
      return [centre[0] + along[0] * shift + side[0] * c, s, centre[2] + along[2] * shift + side[2] * c];
    });
  };
  const cap = Array.from({ length: 7 }, (_, k) => ((k + 1) / 8) * (Math.PI / 2));
  const tip = (t: number, shift: number): Point => {
    const { centre, along } = frame(t);
    return [centre[0] + along[0] * shift, 0, centre[2] + along[2] * shift];
  };
  const middle = [
    ...cap.map((angle) => ring(0, -radius * Math.cos(angle), radius * Math.sin(angle))),
    ...Array.from({ length: m + 1 }, (_, k) => ring(k / m, 0, radius)),
    ...cap.toReversed().map((angle) => ring(1, radius * Math.cos(angle), radius * Math.sin(angle))),
  ];
  return rings(tip(0, -radius), middle, tip(1, radius));
}

/** A flat-backed badge: a dome of the given height over a disc in z = 0 with upright walls. */
export function badge(radius: number, wall: number, dome: number, n = 96): TriangleMesh {
  const circle = (r: number, z: number): Point[] =>
    Array.from({ length: n }, (_, k): Point => {
      const turn = (2 * Math.PI * (k + 0.31)) / n;
      return [r * Math.cos(turn), r * Math.sin(turn), z];
    });
  const steps = 12;
  const domes = Array.from({ length: steps - 1 }, (_, k) => {
    const share = (k + 1) / steps;
    return circle(radius * (1 - share), wall + dome * (1 - (1 - share) ** 2));
  });
  return rings([0, 0, 0], [circle(radius, 0), circle(radius, wall), ...domes], [0, 0, wall + dome]);
}

export const placed = (mesh: TriangleMesh, ...matrices: readonly Matrix4[]): TriangleMesh =>
  moveMesh(mesh, compose(...matrices));

export { bunny, rotation, translation };
