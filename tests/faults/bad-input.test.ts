import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { badNumbers, checkText, faultFolder } from './check-text.ts';

const sound = readFileSync(join(faultFolder, 'rubber.yaml'), 'utf8');

function swap(from: string, to: string): string {
  if (!sound.includes(from)) throw new Error(`the sound plan lacks ${from}`);
  return sound.replace(from, to);
}

/** Line and column, from 1, at which a text stands in a plan. */
function placeOf(text: string, plan: string): string {
  const before = plan.slice(0, plan.indexOf(text)).split('\n');
  return `${before.length}:${(before.at(-1)?.length ?? 0) + 1}`;
}

const nutB = 'size: M8, at: { radius: 64, angle: 100 }';
const nonsense: readonly [what: string, plan: string, code: string, at: string][] = [
  ['a speed of 0', swap('speed: 480', 'speed: 0'), 'plan.out-of-range', '0, grade: G'],
  [
    'a cure at a negative temperature',
    swap('temperature: 155', 'temperature: -155'),
    'plan.out-of-range',
    '-155',
  ],
  ['metal at a negative temperature', swap('pour: 285', 'pour: -5'), 'plan.out-of-range', '-5, solidus'],
  [
    'the rating of the clamps missing',
    swap('count: 4, force: 12 kN', 'count: 4'),
    'closing.unrated',
    'closing:',
  ],
  [
    'a cure below the range of the compound',
    swap('temperature: 155', 'temperature: 135').replace('time: 75', 'time: 5 h'),
    'cure.out-of-range',
    'cure:\n',
  ],
  [
    'a boss outside the disc',
    swap(nutB, 'size: M8, at: { radius: 120, angle: 100 }'),
    'walls.rim-open',
    '{ id: nut-b',
  ],
  [
    'two bosses on one spot',
    swap('tabs:', '    - { id: nut-e, kind: cap nut, size: M8, at: { radius: 64, angle: 100 } }\ntabs:'),
    'layout.bosses-meet',
    '{ id: nut-e',
  ],
  [
    'a master entirely above the surface',
    swap(
      'other: { length: 12, width: 12, above: 2, below: 2',
      'other: { length: 12, width: 12, above: 6, below: -2',
    ),
    'plan.out-of-range',
    '-2,',
  ],
  [
    'a master entirely below it',
    swap('angle: 270 } }', 'angle: 270 }, sink: 4.2 }'),
    'layout.sunk-under',
    '{ id: three',
  ],
  ['a disc of no size', swap('diameter: 160,', 'diameter: 0,'), 'plan.out-of-range', '0, thickness'],
  ['a shot of nothing', swap('shot: 60 g', 'shot: 0 g'), 'plan.out-of-range', '0 g, detail'],
  ['a number that is none', swap('speed: 480', 'speed: .nan'), 'plan.wrong-kind', '.nan'],
  ['an endless number', swap('pour: 285', 'pour: .inf'), 'plan.wrong-kind', '.inf'],
];

it.each(nonsense)('%s is one finding with its line and column', async (_what, plan, code, at) => {
  const report = await checkText(plan, 'plan.yaml');
  const found = report.findings.filter((one) => one.code !== 'pack.flows-out');
  expect(found.map((one) => [one.code, one.at && `${one.at.line}:${one.at.column}`])).toEqual([
    [code, placeOf(at, plan)],
  ]);
  // What is quoted from the plan may be `.nan` itself.
  if (!code.startsWith('plan.')) expect(badNumbers(report)).toEqual([]);
});

/** From 10^low to 10^high, every power of ten as likely as the next. */
const spread = (low: number, high: number) =>
  fc.integer({ min: Math.round(100 * low), max: Math.round(100 * high) }).map((k) => 10 ** (k / 100));
const between = (min: number, max: number) => fc.integer({ min, max });

/** The bench part of a plan with any number that its fields take, plausible or only possible. */
const benches = fc
  .record({
    can: fc.record({ diameter: between(100, 300), depth: between(10, 100) }),
    pressure: spread(-2, 1.6),
    clamps: fc.record({ count: between(1, 60), kN: spread(-2, 3) }),
    lid: spread(-1, 2),
    diffusivity: spread(-9, -5),
    expansion: spread(-6, -2.1),
    t90: spread(-1, 3),
    energy: spread(0, 2.6),
    laidIn: spread(-3, 2),
    cure: fc.record({
      at: between(0, 400),
      minutes: spread(-1, 4),
      start: between(-50, 200),
      cooling: spread(-1, 3),
    }),
    pour: between(0, 1500),
    machine: fc.record({
      max: spread(0, 4),
      force: spread(-3, 3),
      plates: spread(-2, 3),
      unbalance: spread(-1, 5),
    }),
    spin: fc.record({
      speed: spread(0, 4),
      grams: spread(-1, 4),
      detail: spread(-3, 0.69),
      grade: spread(-0.9, 3),
    }),
  })
  .map(
    (b) => `can: { diameter: ${b.can.diameter}, depth: ${b.can.depth}, spew: open }
closing:
  pressure: ${b.pressure} MPa
  clamps: { count: ${b.clamps.count}, force: ${b.clamps.kN} kN }
  bolts: { size: M10, grade: 8.8, count: 4, circle: 190, tension: 5 kN }
  lid: { material: steel, thickness: ${b.lid} }
rubber:
  compound: filled organic rubber
  density: 1.15 g/cm3
  diffusivity: ${b.diffusivity.toFixed(12)} m2/s
  conductivity: 0.22 W/mK
  expansion: ${b.expansion.toFixed(9)} /K
  t90: ${b.t90} min
  referenceTemperature: 160
  activationEnergy: ${b.energy} kJ/mol
  overcure: 8 h
  laidIn: ${b.laidIn} kg
cure:
  temperature: ${b.cure.at}
  time: ${b.cure.minutes} min
  heating: platens
  start: ${b.cure.start}
  cooling: in the can
  coolingConstant: ${b.cure.cooling} min
alloy: { name: lead-free pewter, density: 7300 kg/m3, pour: ${b.pour} }
machine:
  maxSpeed: ${b.machine.max}
  direction: clockwise
  closingForce: ${b.machine.force} kN
  plateMass: ${b.machine.plates} kg
  maxUnbalance: ${b.machine.unbalance} g.mm
spin:
  speed: ${b.spin.speed}
  grade: G${b.spin.grade.toFixed(2)}
  shot: ${b.spin.grams} g
  detail: ${b.spin.detail}
fixture: { material: aluminum }
`,
  );

it('no numbers of the bench put NaN or Infinity into a finding, figure or series', async () => {
  const head = sound.slice(0, sound.indexOf('can:'));
  await fc.assert(
    fc.asyncProperty(benches, async (bench) => {
      const report = await checkText(head + bench, 'plan.yaml');
      expect(report.findings.filter(({ code }) => code.startsWith('plan.'))).toEqual([]);
      expect(badNumbers(report)).toEqual([]);
      expect(report.figures.length).toBeGreaterThan(50);
    }),
    { numRuns: 60, seed: 20261125, endOnFailure: true },
  );
});
