import { expect, test } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';
import { saysOf } from '../said.ts';

/** A plan without fault; the faults below are put in by replacing one piece of it. */
const good = `title: Hedgerow
process: rubber
disc: { diameter: 250, lower: 19, upper: 3/4 in }
sprue:
  hole: 32
  draft: 3
  well: { diameter: 48, depth: 8 }
masters:
  ivy: { file: masters/ivy.stl, unit: mm }
  button: { width: 12, length: 12, above: 2, below: 1 }
placements:
  - { master: ivy, at: { radius: 70, angle: 30 }, sink: 50 % }
  - master: button
    ring: { count: 4, radius: { fromRim: 30 }, start: 15 }
registration:
  bosses:
    - { kind: cap nut, size: M8, at: { radius: { fromRim: 15 }, angle: 0 } }
    - { kind: dome, size: 12, at: { radius: { fromRim: 15 }, angle: 100 } }
supports: [{ placements: button, clearance: 0.2 }]
cure: { cooling: in the can, coolingConstant: 60 }
alloy: { solidus: 240, liquidus: 300 }
gates: straight
`;

test('the plan the faults are put into has none', () => {
  expect(readPlan(good, 'plan.yaml').findings).toEqual([]);
});

interface Fault {
  readonly from: string;
  readonly to: string;
  readonly code: string;
  readonly says: RegExp;
}

/** `from` in the plan is replaced by `to`, in which ^ marks the place the finding must name. */
const fault = (from: string, to: string, code: string, says: RegExp): Fault => ({ from, to, code, says });

const faults: readonly Fault[] = [
  // YAML
  fault('  draft', '^\tdraft', 'plan.tab', /`draft: 3`.*tab/),
  fault('  draft: 3', '   ^draft: 3', 'plan.unreadable', /indented|indentation/i),
  fault('  draft: 3', ' ^draft: 3', 'plan.unreadable', /indented|indentation/i),
  fault('gates: straight\n', 'gates: "straight\n^', 'plan.unreadable', /quote/),
  fault('title: Hedgerow', 'title: ^!herb Hedgerow', 'plan.unreadable', /tags/),
  fault('title: Hedgerow', '^%YAML 1.1\n---\ntitle: Hedgerow', 'plan.unreadable', /YAML/),
  fault('title: Hedgerow', 'title: Hedge^\u0007row', 'plan.unreadable', /U\+0007/),
  fault('gates: straight', '^---\ngates: straight', 'plan.several-documents', /second/),
  fault('title: Hedgerow', 'title: ^*hedge', 'plan.alias', /`\*hedge`/),
  fault('  draft: 3', '  draft: 3\n  ^draft: 4', 'plan.duplicate-key', /`draft`.*line 6/),
  fault('gates: straight', '^disc: { diameter: 9 in }', 'plan.duplicate-key', /`disc`.*line 3/),
  fault('title: Hedgerow', '? ^[a, b]\n: 3', 'plan.wrong-kind', /plain text/),
  fault('title: Hedgerow', '^__proto__: 3', 'plan.unknown-key', /__proto__/),
  // Two fields against each other: told at the second, with the line of the first.
  fault(
    'cure: { cooling: in the can, coolingConstant: 60 }',
    'cure:\n  cooling: out\n  ^coolingConstant: 60',
    'plan.contradicts',
    /`coolingConstant`.*`cooling: out`.*line 21/,
  ),
  fault('liquidus: 300', '^liquidus: 230', 'plan.contradicts', /`liquidus`.*lower than `solidus` in line 21/),
  // Names
  fault('sprue:', '^spru:', 'plan.unknown-key', /`spru`.*`sprue`/),
  fault('disc: {', '^disk: {', 'plan.unknown-key', /`disk`.*`disc`/),
  fault('{ diameter: 250', '{ ^diametre: 250', 'plan.unknown-key', /`diametre`.*`diameter`/),
  fault('fromRim: 30', '^fromRimm: 30', 'plan.unknown-key', /`fromRim`/),
  fault('file:', '^mesh:', 'plan.unknown-key', /`mesh`/),
  fault('clearance: 0.2', '^gap: 0.2', 'plan.unknown-key', /clearance/),
  fault('kind: dome, size: 12', 'kind: dome, ^Size: 12', 'plan.unknown-key', /`size`/),
  fault('title: Hedgerow', 'title: 🐌🐌\n^🐌: 3', 'plan.unknown-key', /🐌/),
  // Missing
  fault('title: Hedgerow\nprocess: rubber', '^title: Hedgerow', 'plan.missing', /`process`.*rigid/i),
  fault('disc: { diameter: 250, lower', '^disc: { lower', 'plan.missing', /`diameter`/),
  fault(
    'sprue:\n  hole: 32\n  draft: 3\n  well: { diameter: 48, depth: 8 }',
    '^sprue:',
    'plan.missing',
    /`sprue`.*empty/i,
  ),
  fault('lower: 19, upper: 3/4 in', '^lower: 19', 'plan.missing', /`lower`.*`upper`/),
  fault(
    '{ master: ivy, at: { radius: 70, angle: 30 }',
    '^{ master: ivy',
    'plan.missing',
    /`at`, `ring` or `each`/,
  ),
  fault(
    'button: { width: 12, length: 12, above: 2, below: 1',
    '^button: { width: 12, length: 12, above: 2',
    'plan.missing',
    /`above` and `below`/,
  ),
  fault('ivy: { file: masters/ivy.stl, unit: mm }', '^ivy: { mass: 3 g }', 'plan.missing', /neither/),
  fault(
    'size: 12, at: { radius: { fromRim: 15 }, angle: 100 }',
    'size: 12, ^at: { radius: { fromRim: 15 } }',
    'plan.missing',
    /`angle`/,
  ),
  // Kinds and words
  fault('process: rubber', 'process: ^rubbr', 'plan.wrong-word', /`rubbr`.*rubber, rigid and poured/),
  fault('gates: straight', 'gates: ^strait', 'plan.wrong-kind', /`strait`.*`straight`/),
  fault('title: Hedgerow', 'title: ^12', 'plan.wrong-kind', /quotes.*"12"/),
  fault('title: Hedgerow', 'revision: ^1.10', 'plan.wrong-kind', /quotes/),
  fault('hole: 32', 'hole: ^[32]', 'plan.wrong-kind', /`sprue.hole` is a list/),
  fault('hole: 32', 'hole: ^true', 'plan.wrong-kind', /`true`/),
  fault('hole: 32', 'hole: ^.nan', 'plan.wrong-kind', /NaN/),
  fault('count: 4', 'count: ^4.5', 'plan.wrong-kind', /whole number/),
  fault('count: 4', 'count: ^four', 'plan.wrong-kind', /whole number/),
  fault('kind: dome', 'kind: ^stud', 'plan.wrong-word', /cap nut, dome, cone/),
  fault('{ diameter: 48, depth: 8 }', '^deep', 'plan.wrong-kind', /`sprue.well` is `deep`/),
  fault('angle: 0 }', 'angle: ^[0] }', 'plan.wrong-kind', /registration.bosses#1.at.angle/),
  // Quantities
  fault('hole: 32', 'hole: ^32 C', 'plan.wrong-unit', /`32 C`.*temperature.*mm/),
  fault('hole: 32', 'hole: ^32 inn', 'plan.wrong-unit', /`inn` is no unit/),
  fault('hole: 32', 'hole: ^wide', 'plan.quantity', /`wide`.*3\/8 in/),
  fault('hole: 32', 'hole: ^3,2', 'plan.decimal-comma', /`3\.2`/),
  fault('depth: 8', 'depth: 8,^5', 'plan.decimal-comma', /comma/),
  fault('hole: 32', 'hole: ^0', 'plan.out-of-range', /more than 0 mm/),
  fault('hole: 32', 'hole: ^5 m', 'plan.out-of-range', /`5 m`.*at most 300 mm/),
  fault('draft: 3', 'draft: ^-3', 'plan.out-of-range', /at least 0 deg/),
  fault('sink: 50 %', 'sink: ^150 %', 'plan.out-of-range', /at most 100 %/),
  fault('sink: 50 %', 'sink: ^silhouete', 'plan.wrong-word', /silhouete.*`silhouette`/),
  fault('radius: 70', 'radius: ^170 %', 'plan.out-of-range', /at most 100 %/),
  fault('count: 4', 'count: ^0', 'plan.out-of-range', /at least 1/),
  fault('size: M8', 'size: ^big', 'plan.quantity', /`M8` or `3\/8`/),
  fault('size: 12', 'size: ^M12', 'plan.quantity', /`M12`.*length/),
  fault('title: Hedgerow', 'title: ^""', 'plan.out-of-range', /empty/),
  fault('title: Hedgerow', `title: ^${'x'.repeat(121)}`, 'plan.out-of-range', /too long/),
  fault('title: Hedgerow', 'title: ^"a\\nb"', 'plan.wrong-kind', /one line/),
  // Things said twice
  fault('lower: 19', '^thickness: 19, lower: 19', 'plan.choose-one', /`thickness`/),
  fault('unit: mm }', '^above: 3 }', 'plan.choose-one', /`above`.*`file`/),
  fault('below: 1 }', 'below: 1, ^unit: in }', 'plan.choose-one', /`unit`/),
  fault('unit: mm }', 'unit: mm, length: 20, ^height: 4 }', 'plan.choose-one', /`length` and `height`/),
  fault('unit: mm }', 'unit: mm, scale: 2, ^height: 4 }', 'plan.choose-one', /`scale` and `height`/),
  fault('below: 1 }', 'below: 1, ^height: 4 }', 'plan.choose-one', /`above` and `below`/),
  fault('below: 1 }', 'below: 1, ^outline: a.svg }', 'plan.choose-one', /`outline`/),
  fault(
    'angle: 30 },',
    'angle: 30 }, ^ring: { count: 2, radius: 30 },',
    'plan.choose-one',
    /`at` and `ring`/,
  ),
  fault('size: M8', 'size: M8, ^height: 4', 'plan.choose-one', /`height`/),
  // Names of the user
  fault('  ivy:', '  ^ivy leaf:', 'plan.bad-id', /`ivy leaf`/),
  fault('{ master: ivy,', '{ id: ^all, master: ivy,', 'plan.bad-id', /`all`/),
  fault('- { master: ivy,', '- { id: ^"a/b", master: ivy,', 'plan.bad-id', /`a\/b`/),
  fault('placements: button', 'placements: ^snail', 'plan.unknown-id', /`snail`.*ivy/),
  fault('{ master: ivy', '{ master: ^ivi', 'plan.unknown-id', /`ivi`.*ivy/),
  fault(
    '{ master: ivy, at: { radius: 70, angle: 30 }, sink: 50 % }\n  - master',
    '{ id: button-2, master: ivy, at: { radius: 70, angle: 30 } }\n  - ^master',
    'plan.duplicate-id',
    /`button-2`.*placements#1/,
  ),
  fault('{ kind: dome', '{ id: ^ivy, kind: dome', 'plan.duplicate-id', /`ivy`.*placements#1/),
  fault(
    'gates: straight',
    'severity: { ^cover.thinn: { severity: note, reason: x } }',
    'plan.unknown-key',
    /`cover.thinn`/,
  ),
];

const shownBefore = (text: string, mark: number): { line: number; column: number } => {
  const lines = text.slice(0, mark).split('\n');
  return { line: lines.length, column: [...(lines.at(-1) ?? '')].length + 1 };
};

test.each(faults.map((one) => [one.to.slice(0, 50), one] as const))('%j', (_, { from, to, code, says }) => {
  expect(good.split(from)).toHaveLength(2);
  const marked = good.replace(from, to);
  const at = { file: 'plan.yaml', ...shownBefore(marked, marked.indexOf('^')) };
  const { plan, findings } = readPlan(marked.replace('^', ''), 'plan.yaml');
  expect(findings.map((one) => ({ code: one.code, says: saysOf(one), at: one.at }))).toEqual([
    { code, says: expect.stringMatching(says), at },
  ]);
  expect(findings[0].severity).toBe('stop');
  expect(plan).toBeUndefined();
});
