import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, it } from 'vitest';
import { makeMasters } from '../../presets/make-masters.ts';
import type { Report } from '../../src/findings/index.ts';
import { badNumbers, checkText } from '../faults/check-text.ts';

const folder = fileURLToPath(new URL('../../presets/hedgerow/', import.meta.url));

/** The demo with two of its six charms, all other sections as they are: a third of the time. */
const demo = readFileSync(join(folder, 'plan.yaml'), 'utf8')
  .replace(/^ {2}(fern-frond|beetle|snail-shell|seed-head): .*\n/gm, '')
  .replace(/^ {2}- \{ master: fern-frond,.*\n/m, '')
  .replace(/^ {2}- \{\n +master: (beetle|snail-shell|seed-head),[\s\S]*?\n {4}\}\n/gm, '')
  .replace(/^supports:\n.*\n/m, '')
  .replace(/, (fern-frond|beetle|seed-head)(?=[,\]])/g, '')
  .replace('[snail-shell, ', '[');

type Change = readonly [from: string, to: string];

/** Copies share one cache, so that each computes only what it changes. */
async function copy(changes: readonly Change[]): Promise<Report> {
  const text = changes.reduce((plan, [from, to]) => {
    if (plan.split(from).length !== 2) throw new Error(`the demo does not hold once: ${from}`);
    return plan.replace(from, to);
  }, demo);
  return checkText(text, 'plan.yaml', folder);
}

const inShort = ({ findings }: Report): string[] =>
  findings.map(({ code, severity, subject }) => `${severity} ${code} ${subject}`).sort();

let own: string[];
beforeAll(async () => {
  await makeMasters(join(folder, 'masters'));
  own = inShort(await copy([]));
});

it('of its own the demo says what is worth knowing, stops of nothing, and warns of air alone', () => {
  expect([...new Set(own.map((line) => line.split(' ').slice(0, 2).join(' ')))]).toEqual([
    'note balance.misrun-grade',
    'note fill.air-may-stay',
    'note fill.open-gate-first',
    'note fit.sprue-lid',
    'note pack.flows-out',
    'note shot.flash-spreads',
    'note support.free',
    'warn fill.air-stays',
  ]);
});

const side = (radius: string, angles: readonly number[]): string =>
  `each: [${angles.map((angle) => `{ radius: ${radius}, angle: ${angle} }`).join(', ')}]`;

const copies: readonly [what: string, changes: readonly Change[], found: readonly string[]][] = [
  [
    'even bosses',
    [
      [
        'size: M8,\n        at: { radius: { fromRim: 14 }, angle: { near: 120, perSector: 4 } }',
        'size: M10,\n        at: { radius: { fromRim: 16 }, angle: 90 }',
      ],
      ['M8, at: { radius: { fromRim: 14 }, angle: 270 }', 'M10, at: { radius: { fromRim: 16 }, angle: 270 }'],
    ],
    ['stop registration.closes-turned mold'],
  ],
  [
    'a sprue form of PLA (and the tab) in the can',
    [['material: aluminum', 'material: PLA']],
    ['stop heat.fixture-soft sprue', 'stop heat.fixture-soft tab-1'],
  ],
  [
    // What lies wholly below the plane is also out of reach of the parting surface, and locked in.
    'one master sunk too deep',
    [
      [
        '      sink: 1.4,\n    }',
        '      sink: 1.4,\n    }\n  - { id: deep, master: oak-button, at: { radius: 66, angle: 0 }, sink: 17 }',
      ],
    ],
    [
      'stop layout.sunk-under deep',
      'warn cover.thin deep',
      'warn mold.parting-limit deep',
      'warn release.undercut deep',
    ],
  ],
  [
    'bolts without clamps',
    [['  clamps: { count: as needed, force: 12 kN, screw: M12 }\n', '']],
    ['stop closing.bolts-alone closing'],
  ],
  ['thin lids', [['thickness: 10.5 %', 'thickness: 8']], ['stop closing.lid-stress closing']],
  [
    'a heavy side',
    [
      ['ring: { perSector: 1, radius: { fromRim: 28 }, offset: 12.5 % }', side('{ fromRim: 28 }', [15, 135])],
      ['ring: { perSector: 2, radius: { fromRim: 59 }, offset: 50 % }', side('66', [30, 90, 150])],
    ],
    ['warn balance.over mold'],
  ],
];

it.each(copies)('%s: just that beyond what the demo says of its own', async (_what, changes, found) => {
  const report = await copy(changes);
  expect(inShort(report).filter((line) => !own.includes(line))).toEqual(found);
  expect(badNumbers(report)).toEqual([]);
});
