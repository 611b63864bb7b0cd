import { expect, test } from 'vitest';
import { resolveLayout } from '../../src/mold/index.ts';
import { readPlan, setInPlan } from '../../src/plan/index.ts';

const shares = `process: rubber
disc: { diameter: 200 }
sprue: { hole: 14 %, well: { diameter: 21 %, depth: 3 % }, dome: { diameter: 8 %, height: 1.5 % } }
tabs: [{ angle: 60, width: 8 %, length: 4 %, inset: 1 }]
notches: [{ angle: 200, width: 2.5 %, depth: 2 % }]
`;

const laid = (text: string) => {
  const { plan, findings } = readPlan(text, 'shares.yaml');
  if (!plan) throw new Error(JSON.stringify(findings));
  return resolveLayout(plan, []).mold;
};

// The definition of a share of the diameter, worked out by hand.
test.each([
  ['200', 200],
  ['9in', 228.6],
  ['15 in', 381],
])('what is given as a share of the disc follows its diameter: %s', (written, diameter) => {
  const edited = setInPlan(shares, [{ path: 'disc.diameter', value: written }]);
  const { sprue, tabs, notches } = laid('text' in edited ? edited.text : '');
  expect(sprue?.holeRadius).toBeCloseTo(0.07 * diameter, 9);
  expect(sprue?.wellRadius).toBeCloseTo(0.105 * diameter, 9);
  expect(sprue?.wellDepth).toBeCloseTo(0.03 * diameter, 9);
  expect(sprue?.domeRadius).toBeCloseTo(0.04 * diameter, 9);
  expect(sprue?.domeHeight).toBeCloseTo(0.015 * diameter, 9);
  expect(tabs[0].width).toBeCloseTo(0.08 * diameter, 9);
  expect(tabs[0].length).toBeCloseTo(0.04 * diameter, 9);
  expect(notches[0].width).toBeCloseTo(0.025 * diameter, 9);
  expect(notches[0].depth).toBeCloseTo(0.02 * diameter, 9);
});

test('a well without a size of its own is half as wide again as a hole given as a share', () => {
  const { sprue } = laid('process: rubber\ndisc: { diameter: 200 }\nsprue: { hole: 14 % }\n');
  expect(sprue?.wellRadius).toBeCloseTo(21, 9);
});

test.each([
  ['14 %', '60 %', 'plan.out-of-range'],
  ['14 %', '0 %', 'plan.out-of-range'],
  ['14 %', '14 C', 'plan.wrong-unit'],
  ['14 %', '400', 'plan.out-of-range'],
])('%s as %s is a stop in its line', (old, now, code) => {
  const { findings } = readPlan(shares.replace(old, now), 'shares.yaml');
  expect(findings.map((one) => [one.code, one.at?.line])).toEqual([[code, 3]]);
});
