import { expect, test } from 'vitest';
import { loadKernel } from '../../src/kernel/index.ts';
import { kinds } from '../../src/kinds/index.ts';
import { resolveLayout } from '../../src/mold/index.ts';
import { parts } from '../../src/parts/index.ts';
import { makeSolids } from '../../src/pipeline/make-solids.ts';
import { readPlan } from '../../src/plan/index.ts';
import { sayFinding } from '../../src/wording/index.ts';

const read = (make: string) =>
  readPlan(
    `process: rubber
disc: { diameter: 150, thickness: 20 }
sprue: {}
registration:
  bosses:
    - { kind: dome, size: 12, at: { radius: 55, angle: 0 } }
    - { kind: dome, size: 10, at: { radius: 55, angle: 130 } }
fixture: { material: PETG, make: ${make} }
`,
    'plan.yaml',
  );

async function idsOf(make: string, only?: readonly string[]) {
  const { plan } = read(make);
  if (!plan) throw new Error(make);
  const made = makeSolids(resolveLayout(plan, []).mold, await loadKernel(), only, {});
  return {
    ids: [...made.solids.map(({ id }) => id), ...made.drawings.map(({ id }) => id)],
    found: made.findings.map(({ code, values }) => [code, values]),
  };
}

test('a plan can name every kind of solid there is', () =>
  expect(kinds.map(({ id }) => id).sort()).toEqual(parts.map(({ id }) => id).sort()));

test('only the kinds a plan names are made', async () => {
  const { ids } = await idsOf('[plug, registration-jig]');
  expect(ids).toEqual(['plug', 'registration-jig', 'registration-jig']);
});

test('what is asked for by name is made whatever the plan says', async () =>
  expect((await idsOf('[plug]', ['sprue-form'])).ids).toEqual(['sprue-form']));

test('a kind this mold has none of is said', async () => {
  const { ids, found } = await idsOf('[plug, layout-plate]');
  expect(ids).toEqual(['plug']);
  expect(found.filter(([code]) => code === 'making.none')).toEqual([
    ['making.none', { kind: 'layout-plate' }],
  ]);
});

test('an unknown kind is an error with the nearest name', () => {
  const { plan, findings } = read('[plug, registraton-jig]');
  expect(plan).toBeUndefined();
  expect(findings.map((one) => [one.code, sayFinding(one, 'metric').remedy, one.at?.line])).toEqual([
    ['plan.wrong-word', 'Write `registration-jig` if that is meant.', 8],
  ]);
});
