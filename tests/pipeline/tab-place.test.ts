import { beforeAll, expect, test } from 'vitest';
import { moveMesh } from '../../src/geometry/index.ts';
import { type Kernel, loadKernel } from '../../src/kernel/index.ts';
import { tab } from '../../src/parts/registration/tab.ts';
import { moldOfText } from '../mold/mold-of-text.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

/** A ring of five buttons 20 mm across and three cap nuts; the tab says nothing of where it goes. */
const plan = (fromDegrees: number, spread: number, nuts: readonly number[]): string => `
process: rubber
disc: { diameter: 200 }
masters:
  button: { length: 20, width: 20, above: 2, below: 2 }
placements:
${[0, 1, 2, 3, 4]
  .map((i) => `  - { master: button, at: { radius: 70, angle: ${fromDegrees + i * spread} } }`)
  .join('\n')}
registration:
  flex: 0.1
  bosses:
${nuts.map((angle) => `    - { kind: cap nut, size: M8, at: { radius: 84, angle: ${angle} } }`).join('\n')}
tabs: [{ width: 20, length: 10 }]
`;

/** The middle of the longest run of rim, in steps of 0.01 degree, whose ray from the axis meets no circle, degrees. */
function widestByWalking(circles: readonly { angle: number; radius: number; reach: number }[]): number {
  const free = Array.from({ length: 36_000 }, (_, i) =>
    circles.every(({ angle, radius, reach }) => {
      const off = ((i / 100 - angle + 540) % 360) - 180;
      // Distance of the circle's middle from the ray.
      const aside = Math.abs(radius * Math.sin((off * Math.PI) / 180));
      return Math.abs(off) > 90 || aside > reach;
    }),
  );
  let best = { start: 0, length: 0 };
  for (let start = 0; start < free.length; start++) {
    if (!free[start] || free[(start + free.length - 1) % free.length]) continue;
    let length = 0;
    while (length < free.length && free[(start + length) % free.length]) length++;
    if (length > best.length) best = { start, length };
  }
  return ((best.start + (best.length - 1) / 2) / 100) % 360;
}

test.each([
  { ring: 'close together', from: 20, spread: 40, nuts: [10, 100, 290] },
  { ring: 'spread out', from: 75, spread: 72, nuts: [40, 115, 185] },
])('a tab with no angle lies in the middle of the widest free arc: parts $ring', async (given) => {
  const mold = await moldOfText(plan(given.from, given.spread, given.nuts));
  const expected = widestByWalking([
    // A square of 20 turned any way lies in a circle of 10 sqrt 2; an M8 has corners of 13 / sqrt 3 (DIN 1587).
    ...[0, 1, 2, 3, 4].map((i) => ({
      angle: (given.from + i * given.spread) % 360,
      radius: 70,
      reach: Math.hypot(10, 10),
    })),
    ...given.nuts.map((angle) => ({ angle, radius: 84, reach: 13 / Math.sqrt(3) })),
  ]);
  const [{ solids }] = tab.units(mold).map((unit) => unit.run({ kernel }));
  const { positions } = moveMesh(solids[0].mesh, solids[0].toMold);
  // The solid itself, in the mold frame: its corners lie alike on both sides of that angle, just inside the rim.
  const angles: number[] = [];
  let far = 0;
  for (let i = 0; i < positions.length; i += 3) {
    const degrees = (Math.atan2(positions[i + 1], positions[i]) * 180) / Math.PI;
    angles.push(((degrees - expected + 540) % 360) - 180);
    far = Math.max(far, Math.hypot(positions[i], positions[i + 1]));
  }
  const [least, most] = [Math.min(...angles), Math.max(...angles)];
  expect(Math.abs(least + most) / 2).toBeLessThan(0.02);
  expect(most - least).toBeGreaterThan(10);
  expect(most - least).toBeLessThan(14);
  expect(far).toBeLessThan(99);
  expect(far).toBeGreaterThan(98);
});
