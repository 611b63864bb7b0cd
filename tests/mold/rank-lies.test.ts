import { describe, expect, it } from 'vitest';
import { compose, moveMesh, rotation, scaling } from '../../src/geometry/index.ts';
import { measureMesh, principalAxes } from '../../src/mesh/index.ts';
import { rankLies } from '../../src/mold/index.ts';
import { box, single } from '../revolved-solids.ts';
import { ellipsoid, torus } from './shaped-masters.ts';

const degrees = 180 / Math.PI;

describe('principal axes', () => {
  // A box a x b x c has its axes along its edges; the least moment, m (b2 + c2) / 12, is about the longest.
  it('of a turned box lie along its edges, longest first', () => {
    const turn = compose(rotation('z', 0.7), rotation('x', -0.4));
    const { inertia } = measureMesh(moveMesh(single(box([-4, -3, -1], [4, 3, 1])), turn));
    const axes = principalAxes({ inertia });
    for (const [k, axis] of axes.entries()) {
      const edge = [0, 1, 2].map((row) => turn[k * 4 + row]);
      const along = axis[0] * edge[0] + axis[1] * edge[1] + axis[2] * edge[2];
      expect(Math.abs(along)).toBeCloseTo(1, 5);
    }
  });
});

describe('ranked lies', () => {
  // A ring lying flat has no undercut at half its height; on edge its hole is undercut.
  it('lays a tilted ring flat, sunk by its radius', () => {
    const tilted = moveMesh(torus(8, 2, 96, 32), rotation('x', 50 / degrees));
    const [best, ...others] = rankLies(tilted);
    expect(best.turnXRad * degrees).toBeCloseTo(-50, -1);
    expect(best.turnYRad * degrees).toBeCloseTo(0, -1);
    expect(best.share).toBeLessThan(0.02);
    expect(best.height).toBeLessThan(5);
    expect(best.sink).toBeCloseTo(best.height / 2, 0);
    for (const lie of others) expect(lie.flat).toBeGreaterThan(best.flat);
    const [file] = others.filter(({ asInFile }) => asInFile);
    expect([file.turnXRad, file.turnYRad]).toEqual([0, 0]);
    expect(file.share).toBeGreaterThan(0.1);
  });

  // A ball is the same whichever way: R deep in 2 R, nothing undercut.
  it('finds nothing to choose between in a ball', () => {
    for (const lie of rankLies(ellipsoid(5, 5, 5, 96), 3)) {
      expect(lie.share).toBeLessThan(0.01);
      expect(lie.sink).toBeCloseTo(5, 1);
      expect(lie.height).toBeCloseTo(10, 1);
    }
  });

  it('grows with the cube of the size and keeps its order', () => {
    const shape = moveMesh(torus(8, 2, 64, 24), compose(scaling(1, 0.6, 1), rotation('y', 0.5)));
    const small = rankLies(shape, 3);
    const large = rankLies(moveMesh(shape, scaling(2)), 3);
    expect(large.map(({ turnXRad }) => Math.round(turnXRad * degrees))).toEqual(
      small.map(({ turnXRad }) => Math.round(turnXRad * degrees)),
    );
    for (const [i, { flat, sink }] of small.entries()) {
      expect(large[i].flat).toBeCloseTo(8 * flat, -0.5);
      expect(large[i].sink).toBeCloseTo(2 * sink, 2);
    }
  });

  it('ranks nothing without a volume', () => {
    expect(rankLies({ positions: new Float32Array(), triangles: new Uint32Array() })).toEqual([]);
  });
});
