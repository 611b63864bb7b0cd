import { expect, test } from 'vitest';
import {
  expandPlacements,
  type Plan,
  readPlan,
  resolveRadius,
  resolveSize,
  type Size,
  setInPlan,
  starterPlan,
  writePlan,
} from '../../src/plan/index.ts';

const inch = 25.4;
const variants = ([60, 150, 6 * inch, 9 * inch, 250, 12 * inch, 18 * inch, 1000] as const).flatMap(
  (diameter) =>
    (['rubber', 'rigid', 'poured'] as const).flatMap((process) =>
      (['mm', 'in'] as const).map((unit) => ({ diameter, process, unit })),
    ),
);

const example = /^#(?! \S)/gm;

const bossPositions = (plan: Plan | undefined) =>
  (plan?.registration?.bosses ?? []).flatMap(({ where }) => ('position' in where ? [where.position] : []));

test.each(variants)('a starter of $diameter mm, $process, in $unit reads clean', (options) => {
  const { plan, findings } = readPlan(starterPlan(options), 'new.yaml');
  expect(findings).toEqual([]);
  expect(plan?.disc.diameter).toBeCloseTo(options.diameter, 2);
  expect(plan?.process).toBe(options.process);
  expect(plan?.placements).toBeUndefined();
});

test.each(variants)('a starter of $diameter mm, $process, in $unit fits its disc', (options) => {
  const { plan } = readPlan(starterPlan(options), 'new.yaml');
  const radius = (plan?.disc.diameter ?? 0) / 2;
  const on = (size: Size | undefined): number => resolveSize(size, 2 * radius) ?? 0;
  const well = on(plan?.sprue?.well?.diameter);
  const bosses = bossPositions(plan);
  expect(bosses).toHaveLength(4);
  for (const position of bosses) {
    const at = resolveRadius(position.radius, radius);
    expect(at).toBeLessThan(radius - 8);
    expect(at).toBeGreaterThan(well / 2 + 5);
  }
  expect(on(plan?.sprue?.hole)).toBeLessThan(well);
  expect(on(plan?.sprue?.well?.depth)).toBeLessThan(plan?.disc.thickness ?? 0);
  expect(on(plan?.sprue?.dome?.height)).toBeLessThan(on(plan?.sprue?.well?.depth));
  for (const { inset = 0, length = 0, width = 0 } of plan?.tabs ?? []) {
    expect(inset + on(length)).toBeLessThan(radius / 2);
    // Its outer corners stay inside the rim, or the can would not close.
    expect(Math.hypot(radius - inset, on(width) / 2)).toBeLessThan(radius);
  }
});

test('turned to any wrong position, a boss of every starter misses by 25 degrees or more', () => {
  const { plan } = readPlan(starterPlan(variants[0]), 'new.yaml');
  const angles = bossPositions(plan).map(({ angleRad }) => (Number(angleRad) * 180) / Math.PI);
  const apart = (a: number, b: number): number => {
    const turn = (((a - b) % 360) + 360) % 360;
    return Math.min(turn, 360 - turn);
  };
  for (let turn = 26; turn <= 334; turn += 0.5) {
    const misses = angles.map((from) => Math.min(...angles.map((to) => apart(from + turn, to))));
    expect(Math.max(...misses)).toBeGreaterThanOrEqual(25);
  }
});

test.each(variants)('the examples of $diameter mm, $process, in $unit can be put in force', (options) => {
  const { plan, findings } = readPlan(starterPlan(options).replace(example, ''), 'new.yaml');
  expect(findings).toEqual([]);
  expect(plan && expandPlacements(plan).map(({ id }) => id)).toEqual([
    'ivy',
    'beetle',
    'button-1',
    'button-2',
    'button-3',
  ]);
});

test('a diameter is never rounded', () => {
  const text = starterPlan({ diameter: 231.7, process: 'rubber', unit: 'in' });
  expect(text).toContain('diameter: 9.122 in');
  expect(starterPlan({ diameter: 231.75, process: 'rubber', unit: 'mm' })).toContain('diameter: 231.75\n');
});

test.each(variants)(
  'a starter of $diameter mm, $process, in $unit is written back letter by letter',
  (options) => {
    const text = starterPlan(options);
    const { source } = readPlan(text, 'new.yaml');
    expect(source && writePlan(source)).toBe(text);
  },
);

test('a change is written back with comments and order kept', () => {
  const text = starterPlan({ diameter: 250, process: 'rubber', unit: 'mm' });
  const { source } = readPlan(text, 'new.yaml');
  source?.document.setIn(['sprue', 'hole'], '1 1/4 in');
  source?.document.setIn(['registration', 'bosses', 1, 'at', 'angle'], 105);
  const changed = text.replace('hole: 13.5 %', 'hole: 1 1/4 in').replace('angle: 100', 'angle: 105');
  expect(changed).not.toBe(text);
  expect(source && writePlan(source)).toBe(changed);
});

test.each(['6in', '9in', '12in'])(
  'a starter for 9 in varied to %s keeps hole and tab in proportion',
  (diameter) => {
    const text = starterPlan({ diameter: 9 * inch, process: 'rubber', unit: 'in' });
    const varied = setInPlan(text, [{ path: 'disc.diameter', value: diameter }]);
    if ('fault' in varied) throw new Error(varied.fault);
    const { plan } = readPlan(varied.text, 'new.yaml');
    const across = plan?.disc.diameter ?? 0;
    const hole = resolveSize(plan?.sprue?.hole, across) ?? 0;
    expect(hole / across).toBeCloseTo(32 / (9 * inch), 3);
    expect((resolveSize(plan?.tabs?.[0].width, across) ?? 0) / across).toBeCloseTo(20 / (9 * inch), 3);
  },
);
