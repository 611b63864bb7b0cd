import { describe, expect, test } from 'vitest';
import { flatPartingSurface, undercut } from '../../src/mold/index.ts';
import { ellipsoid, placed, rotation, torus, translation } from './shaped-masters.ts';

const plane = flatPartingSurface(30);
const near = (value: number, wanted: number, share: number): void =>
  expect(Math.abs(value / wanted - 1)).toBeLessThan(share);

describe('undercut', () => {
  test('of a ball over the plane: pi h^3 / 3, all of it in the lower half', () => {
    // Columns between r0 = sqrt(R^2 - h^2) and R begin at h - sqrt(R^2 - r^2) > 0: the integral of 2 pi r times that.
    const found = undercut(placed(ellipsoid(5, 5, 5, 400), translation(3, 1, 2)), plane, 0.03);
    near(found.above, (Math.PI * 8) / 3, 0.01);
    expect(found.below).toBeLessThan(1e-3);
    expect(found.irreducible).toBeLessThan(1e-3);
    near(found.deepest, 2, 0.15);
  });

  test('of a ball under the plane is the same in the other half', () => {
    const found = undercut(placed(ellipsoid(5, 5, 5, 400), translation(3, 1, -2)), plane, 0.03);
    near(found.below, (Math.PI * 8) / 3, 0.01);
    expect(found.above).toBeLessThan(1e-3);
  });

  test('within a standing ring: what its hole encloses, shared by a plane through its middle', () => {
    // At y the section is a ring of inner radius R - w, w = sqrt(r^2 - y^2); pi (R - w)^2 integrated over -r..r.
    const [R, r] = [4, 1];
    const inside = 2 * Math.PI * R * R * r - Math.PI ** 2 * R * r * r + (4 * Math.PI * r ** 3) / 3;
    // A whole number of columns across: at its two faces the ring's section jumps from all to nothing.
    const found = undercut(placed(torus(R, r, 400, 120), rotation('x', Math.PI / 2)), plane, 0.025);
    near(found.irreducible, inside, 0.005);
    near(found.below + found.above, inside, 0.02);
    near(found.below, found.above, 0.01);
  });
});
