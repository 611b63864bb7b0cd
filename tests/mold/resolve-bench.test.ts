import { expect, test } from 'vitest';
import { resolveLayout } from '../../src/mold/index.ts';
import { readPlan, setInPlan } from '../../src/plan/index.ts';

const rules = `process: rubber
disc: { diameter: 250 }
can: { gap: 1.5, depth: 38 }
closing: { bolts: { size: M10, count: 6, outsideRim: 20 } }
`;

// What the fields say, worked out by hand: 250 + 1.5 and 250 + 2 x 20.
test.each([
  ['250', 251.5, 290],
  ['12 in', 306.3, 344.8],
])('can and bolts follow a disc of %s', (written, can, circle) => {
  const edited = setInPlan(rules, [{ path: 'disc.diameter', value: written }]);
  const { plan } = readPlan('text' in edited ? edited.text : '', 'rules.yaml');
  if (!plan) throw new Error('not read');
  const { bench } = resolveLayout(plan, []).mold;
  expect(bench.can?.diameter).toBeCloseTo(can, 9);
  expect(bench.closing?.bolts?.circle).toBeCloseTo(circle, 9);
});

test.each([
  ['gap: 1.5', 'gap: 1.5, diameter: 251', 3],
  ['outsideRim: 20', 'outsideRim: 20, circle: 290', 4],
])('a rule and a fixed size together are a stop: %s', (old, now, line) => {
  const { findings } = readPlan(rules.replace(old, now), 'rules.yaml');
  expect(findings.map((one) => [one.code, one.at?.line])).toEqual([['plan.choose-one', line]]);
});

const closing = (text: string) => {
  const { findings } = readPlan(`process: rubber\ndisc: { diameter: 250 }\nclosing:\n${text}`, 'rules.yaml');
  return findings.map((one) => [one.code, one.at?.line]);
};

test.each([
  ['  clamps: { count: as needed, force: 12 kN }\n', 'plan.missing', 4],
  ['  pressure: 1 MPa\n  clamps: { count: as needed }\n', 'plan.missing', 5],
  ['  clamps: { count: enough }\n', 'plan.wrong-word', 4],
  ['  clamps: { count: 0 }\n', 'plan.out-of-range', 4],
  ['  clamps: { count: 2.5 }\n', 'plan.out-of-range', 4],
  ['  clamps: { force: 12 kN }\n', 'plan.missing', 4],
  ['  bolts: { size: M10 }\n', 'plan.missing', 4],
  ['  bolts: { size: M10, count: 4, spacing: 150, circle: 290 }\n', 'plan.choose-one', 4],
  ['  bolts: { size: M10, spacing: 150 }\n', 'plan.missing', 4],
  ['  lid: { thickness: 60 % }\n', 'plan.out-of-range', 4],
])('what gives no number is a stop in its place: %s', (text, code, line) => {
  expect(closing(text)).toEqual([[code, line]]);
});

// omega r by hand: 6.28 m/s on 125 mm is 50.24 rad/s, 479.8 rpm; on 76.2 mm 787.0, on 190.5 mm 314.8.
test.each([
  ['250', '6.28 m/s', 480],
  ['6 in', '6.28 m/s', 787],
  ['15 in', '6.28 m/s', 315],
  ['250', '1236.2 ft/min', 480],
])('a rim of %s at %s', (diameter, rimSpeed, rpm) => {
  const rule = `process: rubber\ndisc: { diameter: ${diameter} }\nspin: { rimSpeed: ${rimSpeed} }\n`;
  const { plan } = readPlan(rule, 'rules.yaml');
  if (!plan) throw new Error('not read');
  expect(resolveLayout(plan, []).mold.bench.spin?.speedRpm).toBe(rpm);
  const { findings } = readPlan(rule.replace('{ rim', '{ speed: 480, rim'), 'rules.yaml');
  expect(findings.map(({ code }) => code)).toEqual(['plan.choose-one']);
});

test('more clamps than find room are not asked for, so that the check stops', () => {
  const { plan } = readPlan(
    'process: rubber\ndisc: { diameter: 250 }\nclosing: { pressure: 5 MPa, clamps: { count: as needed, force: 100 N } }\n',
    'rules.yaml',
  );
  if (!plan) throw new Error('not read');
  expect(resolveLayout(plan, []).mold.bench.closing?.clamps?.count).toBe(60);
});
