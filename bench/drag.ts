/**
 * How soon walls and covers follow the hand: 36 placements of 70 000 triangles, one of them moved from its place toward a
 * neighbor in 60 steps, on reduced masters as the page does it, after the page has warmed up; against the same steps on
 * the whole masters. CPU time of the process, so that other work on the machine does not count. Run with
 * `npx tsx bench/drag.ts`.
 */

import { translation } from '../src/geometry/index.ts';
import { type Kernel, loadKernel } from '../src/kernel/index.ts';
import type { Mold } from '../src/mold/index.ts';
import { Cache, checkNear, placeMold, readMasters, roughError, roughMold } from '../src/pipeline/index.ts';
import { warmUpMoves } from '../src/preview/worker/warm-up.ts';
import { withDragged } from '../src/preview/worker/with-dragged.ts';
import { manyMesh, manyPlan } from '../tests/browser/bumpy-mesh.ts';

/** ms, and mm. */
const aim = 33;
const errorAim = 0.1;
const steps = 60;

async function lay(kernel: Kernel): Promise<Mold> {
  const bytes = manyMesh();
  const source = {
    bytes: new TextEncoder().encode(manyPlan),
    name: 'plan.yaml',
    files: async (name: string) => ({ bytes, name, outside: false }),
  };
  const read = await readMasters(source, kernel);
  if (!read.plan || !read.masters) throw new Error(read.findings.map(({ code }) => code).join('\n'));
  return placeMold(read.plan, read.masters, []).mold;
}

/** From its place at (118, 0) to (100, 20), 4 mm from its neighbor; ms of CPU for each step. */
function drag(mold: Mold, kernel: Kernel): number[] {
  const cache = new Cache();
  return Array.from({ length: steps }, (_, k) => {
    const share = (k + 1) / steps;
    const dragged = {
      kind: 'placement',
      id: 'leaf-1',
      matrix: translation(-18 * share, 20 * share, 0),
    } as const;
    const before = process.cpuUsage();
    checkNear(withDragged(mold, dragged), dragged.id, kernel, cache);
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
}

const share = (values: readonly number[], part: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length * part)];

const verdict = (value: number, most: number): string =>
  `aim at most ${most}: ${value <= most ? 'met' : 'MISSED'}`;

const kernel = await loadKernel();
const whole = await lay(kernel);
const rough = roughMold(whole, kernel);
const count = ({ masters }: Mold): number => masters[0].mesh.triangles.length / 3;
console.log(`masters of ${count(whole)} triangles, reduced to ${count(rough)}`);
for (const dragged of warmUpMoves(rough)) checkNear(withDragged(rough, dragged), dragged.id, kernel);
const [moved, exact] = [drag(rough, kernel), drag(whole, kernel)];
const p95 = share(moved, 0.95);
console.log(
  `  reduced: median ${share(moved, 0.5).toFixed(1)} ms, p95 ${p95.toFixed(1)} ms, ${verdict(p95, aim)}`,
);
console.log(`  whole: median ${share(exact, 0.5).toFixed(1)} ms, p95 ${share(exact, 0.95).toFixed(1)} ms`);
console.log(`  reduced to whole, p95: ${(p95 / share(exact, 0.95)).toFixed(2)}`);
console.log(`  stated error ${roughError.toFixed(4)} mm, ${verdict(roughError, errorAim)}`);
