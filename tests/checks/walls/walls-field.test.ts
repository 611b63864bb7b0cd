import { describe, expect, it } from 'vitest';
import { wallsField } from '../../../src/checks/walls/walls-field.ts';
import {
  compose,
  type Matrix4,
  movePoint,
  rotation,
  scaling,
  translation,
} from '../../../src/geometry/index.ts';
import type { Mold } from '../../../src/mold/index.ts';
import { ball, box, single } from '../../revolved-solids.ts';
import { straightChannel } from '../../straight-channel.ts';
import { emptyMold, nutAt, runCheck, smallSprue, withMaster } from '../small-mold.ts';

const radius = 5;
const sphere = single(ball(radius, [0, 0, 0]));
/** What the 96 sides of the ball lie inside its round at most. */
const sagitta = radius * (1 - Math.cos(Math.PI / 48) ** 2);

type Point = readonly [number, number, number];

async function fieldOf(mold: Mold, id: string): Promise<Float32Array> {
  const { fields } = await runCheck(wallsField, mold);
  const found = fields.filter(({ subject, name }) => subject === id && name === 'walls.thickness');
  if (found.length !== 1) throw new Error(`${found.length} fields of ${id}`);
  return found[0].values;
}

/** Vertices of a mesh where its matrix puts them. */
const placed = ({ positions: p }: { positions: Float32Array }, matrix: Matrix4): Point[] =>
  Array.from({ length: p.length / 3 }, (_, v) => movePoint(matrix, [p[3 * v], p[3 * v + 1], p[3 * v + 2]]));

/** Distance of a point from a triangle by the closest of face, edges and corners; from memory, plain vector geometry. */
function toTriangle(point: Point, [a, b, c]: readonly Point[]): number {
  const less = (p: Point, q: Point): Point => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
  const dot = (p: Point, q: Point): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
  const cross = (p: Point, q: Point): Point => [
    p[1] * q[2] - p[2] * q[1],
    p[2] * q[0] - p[0] * q[2],
    p[0] * q[1] - p[1] * q[0],
  ];
  const sides = [
    [a, b],
    [b, c],
    [c, a],
  ] as const;
  const normal = cross(less(b, a), less(c, a));
  const within = sides.every(([p, q]) => dot(cross(less(q, p), less(point, p)), normal) >= 0);
  const length = Math.sqrt(dot(normal, normal));
  if (within && length > 0) return Math.abs(dot(less(point, a), normal)) / length;
  return Math.min(
    ...sides.map(([p, q]) => {
      const side = less(q, p);
      const square = dot(side, side);
      const t = square > 0 ? Math.min(1, Math.max(0, dot(less(point, p), side) / square)) : 0;
      const gap = less(point, [p[0] + t * side[0], p[1] + t * side[1], p[2] + t * side[2]]);
      return Math.sqrt(dot(gap, gap));
    }),
  );
}

describe('thickness of the walls', () => {
  // Distance of a point of one ball from the other: to its center, less the radius; the faces are 12.7 - |z| away.
  it('of a ball beside a ball under two planes', async () => {
    const [a, b] = [translation(60, 0, 0), translation(60, 13, 1)];
    const values = await fieldOf(withMaster(emptyMold, 'seed', sphere, a, b), 'seed-1');
    const points = placed(sphere, a);
    expect(values).toHaveLength(points.length);
    let nearBall = 0;
    for (const [v, [x, y, z]] of points.entries()) {
      const round = Math.hypot(x - 60, y - 13, z - 1) - radius;
      const plane = 12.7 - Math.abs(z);
      if (round < plane) nearBall++;
      expect(values[v]).toBeGreaterThan(Math.min(round, plane) - 1e-5);
      expect(values[v]).toBeLessThan(Math.min(round + sagitta, plane) + 1e-5);
    }
    expect(nearBall).toBeGreaterThan(points.length / 4);
    expect(nearBall).toBeLessThan(points.length);
  });

  it('of a ball alone under an outer face, exactly: the plane less z', async () => {
    const at = translation(60, 0, 4);
    const values = await fieldOf(withMaster(emptyMold, 'seed', sphere, at), 'seed-1');
    for (const [v, [, , z]] of placed(sphere, at).entries()) {
      expect(values[v]).toBeCloseTo(Math.min(12.7 - z, 12.7 + z), 5);
    }
  });

  it('at the rim and its chamfer', async () => {
    const disc = { ...emptyMold.disc, rimChamfer: 6 };
    const at = translation(117, 0, 7);
    const brick = single(box([-3, -2, -2], [3, 2, 2]));
    const values = await fieldOf(withMaster({ ...emptyMold, disc }, 'brick', brick, at), 'brick-1');
    // The chamfer is the cone r + z = 125 + 12.7 - 6, 45 degrees steep: its distance over the root of 2.
    for (const [v, [x, y, z]] of placed(brick, at).entries()) {
      const r = Math.hypot(x, y);
      const wanted = Math.min(125 - r, 12.7 - z, (125 + 12.7 - 6 - r - z) / Math.SQRT2);
      expect(values[v]).toBeCloseTo(wanted, 5);
    }
    expect(Math.min(...values)).toBeLessThan(12.7 - 9);
  });

  it('is what every triangle of the others, one by one, gives', async () => {
    const coarse = single(ball(4, [0.5, 0, 0], 10, 14));
    const brick = single(box([-4, -3, -2], [4, 3, 2]));
    const first = compose(translation(60, 0, 0), rotation('x', 0.5), scaling(1.2));
    const others = [
      compose(translation(60, 10, 2), rotation('y', 0.8), scaling(0.9)),
      compose(translation(70, -3, -1), rotation('z', 2), scaling(1.1)),
    ];
    const mold = withMaster(withMaster(emptyMold, 'bead', coarse, first), 'brick', brick, ...others);
    const values = await fieldOf(mold, 'bead-1');
    const triangles = others.flatMap((matrix) => {
      const points = placed(brick, matrix);
      return Array.from({ length: brick.triangles.length / 3 }, (_, t) =>
        [0, 1, 2].map((k) => points[brick.triangles[3 * t + k]]),
      );
    });
    for (const [v, point] of placed(coarse, first).entries()) {
      const all = triangles.map((triangle) => toTriangle(point, triangle));
      expect(values[v]).toBeCloseTo(Math.min(...all, 12.7 - Math.abs(point[2])), 4);
    }
  });

  it('sees bosses, the well, tabs and the channels of others, but not its own', async () => {
    const brick = single(box([-4, -3, -2], [4, 3, 2]));
    const at = translation(60, 0, 0);
    const plain = withMaster(emptyMold, 'brick', brick, at);
    const least = async (mold: Mold) => Math.min(...(await fieldOf(mold, 'brick-1')));
    const gate = (placement: string) =>
      straightChannel({
        id: 'gate-1',
        kind: 'gate' as const,
        placement,
        from: [20, 7] as const,
        to: [100, 7] as const,
        width: 3,
        depth: 1.5,
        half: 'upper' as const,
      });
    expect(await least(plain)).toBeCloseTo(10.7, 5);
    // Beside the collar of a nut: its hexagon below the plane reaches to 13 / sqrt(3); polygons are a hair wider.
    expect(await least({ ...plain, bosses: [nutAt('east', 75, 3)] })).toBeCloseTo(11 - 13 / Math.sqrt(3), 1);
    const well = { ...withMaster(emptyMold, 'brick', brick, translation(24, 0, 0)), sprue: smallSprue };
    // A corner, 3 mm off the axis: 20.22 from it; the well is 15 wide at the plane and narrows downward.
    expect(await least(well)).toBeLessThan(Math.hypot(20, 3) - 15 + 2);
    // Corners 4 beside the middle of the gate and 2 up; its half-round is eight chords, one of whose ends is nearest.
    const [across, up] = [1.5 * Math.cos(Math.PI / 8), 1.5 * Math.sin(Math.PI / 8)];
    expect(await least({ ...plain, channels: [gate('other')] })).toBeCloseTo(
      Math.hypot(4 - across, 2 - up),
      5,
    );
    expect(await least({ ...plain, channels: [gate('brick-1')] })).toBeCloseTo(10.7, 5);
    const notches = [{ id: 'notch-1', angleRad: 0, width: 6, depth: 58 }];
    expect(await least({ ...plain, notches })).toBeLessThan(5);
  });

  it('is 0 where a vertex lies within another cavity or outside the disc', async () => {
    const big = withMaster(emptyMold, 'bead', single(ball(9, [0, 0, 0])), translation(50, 0, 0));
    const inner = withMaster(big, 'brick', single(box([-2, -2, -2], [2, 2, 2])), translation(50, 0, 0));
    expect(Math.max(...(await fieldOf(inner, 'brick-1')))).toBe(0);
    const out = withMaster(emptyMold, 'seed', sphere, translation(123, 0, 0));
    const values = await fieldOf(out, 'seed-1');
    expect(Math.min(...values)).toBe(0);
  });

  it('says the same when all is turned, and where something far off is added', async () => {
    const places = [translation(60, 0, 0), translation(60, 11, 1)];
    const plain = await fieldOf(withMaster(emptyMold, 'seed', sphere, ...places), 'seed-1');
    const turned = places.map((one) => compose(rotation('z', 1.1), one));
    const again = await fieldOf(withMaster(emptyMold, 'seed', sphere, ...turned), 'seed-1');
    for (const [v, value] of plain.entries()) expect(again[v]).toBeCloseTo(value, 4);
    const [before] = wallsField.units(withMaster(emptyMold, 'seed', sphere, ...places));
    const [after] = wallsField.units(
      withMaster(emptyMold, 'seed', sphere, ...places, translation(-60, 0, 0)),
    );
    expect(after.input).toEqual(before.input);
  });
});
