import { expect, test } from 'vitest';
import { loadKernel } from '../../../src/kernel/index.ts';
import { placeMold, readMasters } from '../../../src/pipeline/index.ts';
import { warmUpMoves } from '../../../src/preview/worker/warm-up.ts';
import { withDragged } from '../../../src/preview/worker/with-dragged.ts';

async function lay(placements: string) {
  const text = `process: rubber
disc: { diameter: 160, thickness: 14 }
parting: { surface: flat }
masters:
  button: { length: 12, width: 12, above: 3, below: 1 }
placements:
${placements}
`;
  const files = async () => ({ fault: 'there are none' });
  const { plan, masters } = await readMasters(
    { bytes: new TextEncoder().encode(text), name: 'plan.yaml', files },
    await loadKernel(),
  );
  if (!plan || !masters) throw new Error('the plan cannot be read');
  return placeMold(plan, masters, []).mold;
}

test('one comes from two walls away to its nearest neighbor, and is never past it', async () => {
  const mold = await lay(`  - { master: button, at: { radius: 40, angle: 0 } }
  - { master: button, at: { radius: 40, angle: 180 } }
  - { master: button, at: { radius: 40, angle: 60 } }`);
  const gaps = warmUpMoves(mold).map((dragged) => {
    const [one, , near] = withDragged(mold, dragged).placements;
    return Math.hypot(one.x - near.x, one.y - near.y) - one.reach - near.reach;
  });
  expect(gaps.length).toBeGreaterThan(5);
  expect(gaps[0]).toBeCloseTo(2 * mold.limits.wall, 9);
  for (const [i, gap] of gaps.entries()) {
    expect(gap).toBeGreaterThan(0);
    if (i > 0) expect(gap).toBeLessThan(gaps[i - 1]);
  }
});

test('there is nothing to warm up with one placement, or with two in one place', async () => {
  expect(warmUpMoves(await lay('  - { master: button, at: { radius: 40, angle: 0 } }'))).toEqual([]);
  const heaped = await lay(`  - { master: button, at: { radius: 40, angle: 0 } }
  - { master: button, at: { radius: 40, angle: 0 } }`);
  expect(warmUpMoves(heaped)).toEqual([]);
});
