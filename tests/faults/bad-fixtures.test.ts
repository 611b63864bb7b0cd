import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { loadKernel } from '../../src/kernel/index.ts';
import { resolveLayout } from '../../src/mold/index.ts';
import { Cache, readMold } from '../../src/pipeline/index.ts';
import { makeSolids } from '../../src/pipeline/make-solids.ts';
import { readPlan } from '../../src/plan/index.ts';
import { badNumbers, checkText, faultFolder } from './check-text.ts';

const sound = readFileSync(join(faultFolder, 'rubber.yaml'), 'utf8');

function swap(from: string, to: string, text = sound): string {
  if (!text.includes(from)) throw new Error(`the plan lacks ${from}`);
  return text.replace(from, to);
}

const making = (fields: string, text = sound): string =>
  swap(
    'fixture: { material: aluminum }',
    `fixture: { material: aluminum, process: machined, ${fields} }`,
    text,
  );

/** What is found while the fixtures of a plan are made. */
async function foundMaking(text: string) {
  const kernel = await loadKernel();
  const cache = new Cache();
  const bytes = new TextEncoder().encode(text);
  const { mold } = await readMold(
    { bytes, name: 'plan.yaml', files: () => Promise.reject(new Error('no files')) },
    kernel,
    {
      cache,
    },
  );
  if (!mold) throw new Error('the plan cannot be read');
  return makeSolids(mold, kernel, undefined, { cache }).findings;
}

it.each([
  ['nothing wrong', making('make: [registration-jig, layout-plate]'), []],
  [
    'a ring of the jig narrower than the nuts',
    making('make: [registration-jig], jig: { width: 10 }'),
    ['jig.thin registration-jig'],
  ],
  [
    'a ring thinner than the nuts are high',
    making('make: [registration-jig], jig: { thickness: 3 }'),
    ['jig.low registration-jig'],
  ],
  [
    'outlines on the layout plate that overlap',
    making('make: [layout-plate]', swap('radius: 40, angle: 150', 'radius: 40, angle: 45')),
    ['layout-plate.overlap layout-plate'],
  ],
  [
    'a bed smaller than any joint',
    making('make: [registration-jig], bed: { x: 12, y: 12, z: 100 }'),
    ['bed.too-small registration-jig'],
  ],
])('%s is one finding', async (_what, text, codes) => {
  const findings = await foundMaking(text);
  expect(findings.map(({ code, subject }) => `${code} ${subject}`)).toEqual(codes);
  expect(badNumbers(findings)).toEqual([]);
});

it('a material nobody knows is a stop about each thing of it that lies in the hot can', async () => {
  const { findings } = await checkText(swap('material: aluminum', 'material: unobtainium'), 'plan.yaml');
  const stops = findings.filter(({ severity }) => severity === 'stop');
  expect(stops.map(({ code, subject }) => `${code} ${subject}`)).toEqual([
    'heat.unknown sprue',
    'heat.unknown tab',
  ]);
  for (const { values } of stops) expect(values.material).toBe('unobtainium');
});

it('a chamfer is usual where layers are built up, by the table; the plan has the last word', () => {
  const chamfer = (fixture: string): number | undefined => {
    const text = `process: rubber\ndisc: { diameter: 150, thickness: 20 }\nfixture: { ${fixture} }\n`;
    const { plan } = readPlan(text, 'plan.yaml');
    if (!plan) throw new Error(fixture);
    return resolveLayout(plan, []).mold.fixture.footChamfer;
  };
  expect(['process: FDM', 'process: SLA', 'process: machined', 'material: PLA'].map(chamfer)).toEqual([
    0.4,
    0.3,
    undefined,
    undefined,
  ]);
  expect(chamfer('process: FDM, footChamfer: 0')).toBeUndefined();
  expect(chamfer('process: machined, footChamfer: 1/64 in')).toBeCloseTo(0.396875, 9);
});
