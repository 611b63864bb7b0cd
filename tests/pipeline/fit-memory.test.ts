import { expect, test } from 'vitest';
import type { TriangleMesh } from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import type { Master } from '../../src/mold/index.ts';
import { fitMemory, mostPlacedTriangles } from '../../src/pipeline/fit-memory.ts';
import { readPlan } from '../../src/plan/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { asMesh, ball } from '../mesh/rough-shapes.ts';
import { masterOf } from '../parts/example-masters.ts';

const kernel = await loadKernel();

function planOf(places: number, limits = ''): NonNullable<ReturnType<typeof readPlan>['plan']> {
  const text = `process: rubber
disc: { diameter: 12 in, thickness: 40 }
masters: { bead: { file: bead.stl } }
placements: [{ master: bead, ring: { count: ${places}, radius: 100 } }]
${limits}`;
  const { plan, findings } = readPlan(new TextEncoder().encode(text), 'plan.yaml');
  if (!plan) throw new Error(findings.map(({ code }) => code).join());
  return plan;
}

const radius = 10;
const bead = masterOf('bead', asMesh(ball(radius, 120)));
const triangles = bead.mesh.triangles.length / 3;

test('masters that fit come back as they are, without a word', () => {
  const { masters, findings } = fitMemory(planOf(6), [bead], kernel, 6 * triangles);
  expect(masters?.[0]).toBe(bead);
  expect(findings).toEqual([]);
});

test('masters that do not are made coarser, and no point of a ball leaves it by more than the error said', () => {
  const { masters, findings } = fitMemory(
    planOf(6, 'limits: { coarsening: 0.2 }'),
    [bead],
    kernel,
    3 * triangles,
  );
  const mesh = masters?.[0].mesh as TriangleMesh;
  expect(findings).toMatchObject([{ code: 'repair.coarsened', severity: 'warn', subject: 'bead' }]);
  const [{ values }] = findings;
  expect(values).toMatchObject({
    measured: triangles,
    left: mesh.triangles.length / 3,
    wanted: 6 * triangles,
  });
  expect(6 * (mesh.triangles.length / 3)).toBeLessThanOrEqual(3 * triangles);
  const error = values.error as number;
  expect(error).toBeLessThanOrEqual(0.2);
  // A chord of the old mesh is within its sagitta of the ball; middles of the new faces too, but for the error.
  const sagitta = radius * (1 - Math.cos(Math.PI / 60));
  for (let f = 0; f < mesh.triangles.length; f += 3) {
    const middle = [0, 1, 2].map(
      (axis) => [0, 1, 2].reduce((sum, k) => sum + mesh.positions[mesh.triangles[f + k] * 3 + axis], 0) / 3,
    );
    expect(Math.abs(Math.hypot(...middle) - radius)).toBeLessThan(sagitta + error);
  }
  expect(sayFinding(findings[0], 'inch').says).toMatch(/moved by 0\.00\d+ in/);
});

test('where that may not be, or is not enough, it is a stop about the heaviest master', () => {
  for (const limits of ['limits: { coarsening: 0 }', 'limits: { coarsening: 0.0001 }']) {
    const { masters, findings } = fitMemory(planOf(6, limits), [bead], kernel, triangles);
    expect(masters).toBeUndefined();
    expect(findings).toMatchObject([
      { code: 'repair.memory', severity: 'stop', subject: 'bead', values: { measured: 6 * triangles } },
    ]);
  }
});

test('twelve masters of 2.5 million triangles are told beforehand, without feeding the kernel', () => {
  const huge: Master = {
    ...bead,
    mesh: { positions: bead.mesh.positions, triangles: new Uint32Array(7_500_000) },
  };
  const { findings } = fitMemory(planOf(12, 'limits: { coarsening: 0 }'), [huge], kernel);
  expect(findings[0].values).toMatchObject({ measured: 30_000_000, limit: mostPlacedTriangles });
  expect(mostPlacedTriangles * 640).toBeLessThanOrEqual(0.75 * 2 ** 32);
});
