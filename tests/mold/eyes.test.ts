import { describe, expect, it } from 'vitest';
import { release } from '../../src/checks/release/release.ts';
import { compose, moveMesh, rotation, type TriangleMesh, translation } from '../../src/geometry/index.ts';
import { handlesOf } from '../../src/mold/index.ts';
import { emptyMold, runCheck, withMaster } from '../checks/small-mold.ts';
import { ball, single } from '../revolved-solids.ts';

/** Torus about z: R to the middle of a wire of radius r. */
function ring(R: number, r: number, around = 96, across = 32): TriangleMesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let i = 0; i < around; i++)
    for (let j = 0; j < across; j++) {
      const [a, b] = [(2 * Math.PI * i) / around, (2 * Math.PI * j) / across];
      const out = R + r * Math.cos(b);
      positions.push(out * Math.cos(a), out * Math.sin(a), r * Math.sin(b));
      const at = (p: number, q: number) => (p % around) * across + (q % across);
      triangles.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j), at(i + 1, j + 1), at(i, j + 1));
    }
  return { positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
}
const both = (a: TriangleMesh, b: TriangleMesh): TriangleMesh => ({
  positions: Float32Array.from([...a.positions, ...b.positions]),
  triangles: Uint32Array.from([...a.triangles, ...[...b.triangles].map((i) => i + a.positions.length / 3)]),
});

// V - E + F = 2 - 2 g for each piece (Euler, Poincare): 0 of a torus, 2 of a ball.
it('counts handles', () => {
  expect(handlesOf(ring(6, 1.5))).toBe(1);
  expect(handlesOf(single(ball(5, [0, 0, 0])))).toBe(0);
  expect(handlesOf(both(ring(6, 1.5), ring(3, 0.5)))).toBe(2);
});

describe('an eye', () => {
  const eyesOf = async (mesh: TriangleMesh, turnX: number) => {
    const lies = compose(translation(60, 0, 0), rotation('x', turnX));
    const { findings } = await runCheck(release, withMaster(emptyMold, 'bail', mesh, lies));
    return findings.filter(({ code }) => code === 'release.eye');
  };
  // Standing on edge its eye is filled with rubber, 2 R = 12 mm high at its mouth; lying flat a post lifts out.
  it('on edge is told, with the rubber in it; flat it is not', async () => {
    const [eye, ...more] = await eyesOf(ring(6, 1.5), Math.PI / 2);
    expect(more).toEqual([]);
    expect(eye).toMatchObject({ severity: 'warn', subject: 'bail-1', values: { count: 1 } });
    // Two by two columns 0.08 mm apart, within 0.16 mm of the wire's edge: 2 (R - sqrt(r^2 - (r - 0.16)^2)) at least.
    expect(eye.values.bridge).toBeGreaterThan(2 * (6 - Math.sqrt(1.5 ** 2 - 1.34 ** 2)));
    expect(eye.values.bridge).toBeLessThan(12);
    expect(await eyesOf(ring(6, 1.5), 0)).toEqual([]);
  });
  // A small bail on edge in a bead's place of 1150 mm3: what it shuts in is under a tenth of that, and told all the same.
  it('however little it is of the cavity', async () => {
    const upright = moveMesh(ring(2, 0.4), compose(translation(9, 0, 0), rotation('x', Math.PI / 2)));
    const charm = withMaster(
      emptyMold,
      'charm',
      both(single(ball(6.5, [0, 0, 0])), upright),
      translation(60, 0, 0),
    );
    const { findings } = await runCheck(release, charm);
    expect(findings.map(({ code }) => code)).toEqual(['release.eye']);
  });
});
