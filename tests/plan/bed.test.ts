import { expect, test } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';

const read = (bed: string) =>
  readPlan(`process: rubber\ndisc: { diameter: 200 }\nfixture: { bed: ${bed} }\n`, 'plan.yaml');

test.each([
  ['220x220', { x: 220, y: 220 }],
  ['220 x 210 x 250', { x: 220, y: 210, z: 250 }],
  ['8 x 9 in', { x: 203.2, y: 228.6 }],
  ['{ x: 220, y: 200 }', { x: 220, y: 200 }],
])('a bed of %s', (written, bed) => {
  const { plan, findings } = read(written);
  expect(findings).toEqual([]);
  const found = plan?.fixture?.bed;
  expect(Object.keys(found ?? {})).toEqual(Object.keys(bed));
  for (const [side, length] of Object.entries(bed))
    expect(found).toHaveProperty(side, expect.closeTo(length, 9));
});

test.each(['220', '"220"', 'large', '220x', '220x220x220x220', '220x9000'])(
  'a bed of %s is a stop in its line',
  (written) => {
    const { plan, findings } = read(written);
    expect(plan).toBeUndefined();
    expect(findings.every(({ severity, at }) => severity === 'stop' && at?.line === 3)).toBe(true);
    expect(findings.length).toBeGreaterThan(0);
  },
);
