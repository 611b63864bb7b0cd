import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { makeMasters } from '../../presets/make-masters.ts';
import { auditStl, isClosed } from '../../src/export/index.ts';
import { filesIn, run, sha256, workbench } from '../cli/workbench.ts';
import { judgeStl } from '../judges.ts';

const presets = fileURLToPath(new URL('../../presets/', import.meta.url));
const masters = join(presets, 'hedgerow/masters');
const rabbit = createRequire(import.meta.url).resolve('stl-models/objects/bunny.bin.stl');
const bench = workbench();

beforeAll(async () => {
  await makeMasters(masters);
});

const faultsByBytes = new Map<string, readonly string[]>();

/** What our own audit and the independent programs find; files of the same bytes are asked about once. */
function faultsOf(path: string, bytes: Uint8Array): readonly string[] {
  const key = sha256(bytes);
  const known = faultsByBytes.get(key);
  if (known) return known;
  const found = [...(isClosed(auditStl(bytes)) ? [] : ['our audit']), ...judgeStl(path).faults];
  faultsByBytes.set(key, found);
  return found;
}

/** Builds a plan and holds every STL it leaves against our own audit and the independent programs. */
async function judged(plan: string, out: string): Promise<{ names: string[]; text: string }> {
  const { code, out: text, err } = await run('build', plan, '--formats', 'stl', '--out', bench.path(out));
  expect(err).toBe('');
  expect(code).toBe(0);
  const files = [...filesIn(bench.path(out))].filter(([name]) => name.endsWith('.stl'));
  const faults = files.flatMap(([name, bytes]) =>
    faultsOf(join(bench.path(out), name), bytes).map((fault) => `${name}: ${fault}`),
  );
  expect(faults).toEqual([]);
  return { names: files.map(([name]) => name.split('/').at(-1) ?? ''), text };
}

const starters = readdirSync(presets).filter((name) => name.endsWith('.yaml'));

describe.each([...starters, 'stand-ins-only'])('%s', (name) => {
  test('builds solids that independent programs find sound', async () => {
    const { names } = await judged(join(presets, name), `out-${name}`);
    expect(names.length).toBeGreaterThan(name.startsWith('sprue') ? 1 : 3);
  });
});

// Its rings of four are the same shapes four times over: one of each shows all that four do, in a quarter of the time.
test('pattern plates of a charm of each kind are sound', async () => {
  const whole = readFileSync(join(presets, 'pattern-plates/plan.yaml'), 'utf8');
  expect(whole.match(/count: 4/g)).toHaveLength(2);
  const plan = whole
    .replaceAll('count: 4', 'count: 1')
    .replaceAll(/\.\.\/hedgerow\/masters\/([\w-]+\.stl)/g, `'${masters}/$1'`);
  const { names } = await judged(bench.put('plates.yaml', plan), 'out-plates');
  expect(names).toEqual(expect.arrayContaining(['lower-pattern-plate.stl', 'upper-pattern-plate.stl']));
});

/** One of each charm, close together, and a mesh others made that has 223 open edges. */
const oneOfEach = `
title: One of each
process: rubber
disc: { diameter: 190, thickness: 22, label: ONE EACH }
sprue: {}
masters:
  ivy: { file: '${masters}/ivy-leaf.stl', unit: mm }
  fern: { file: '${masters}/fern-frond.stl', unit: mm }
  beetle: { file: '${masters}/beetle.stl', unit: mm }
  snail: { file: '${masters}/snail-shell.stl', unit: mm, lie: { turnX: -60 } }
  button: { file: '${masters}/oak-button.stl', unit: mm }
  seed: { file: '${masters}/seed-head.stl', unit: mm }
  rabbit: { file: '${rabbit}', unit: m, scale: 16 % }
placements:
  - { master: ivy, at: { radius: 60, angle: 10 } }
  - { master: fern, at: { radius: 60, angle: 60 } }
  - { master: beetle, at: { radius: 60, angle: 110 }, turn: 180 }
  - { master: snail, at: { radius: 60, angle: 160 } }
  - { master: button, at: { radius: 60, angle: 210 }, sink: 1.4 }
  - { master: seed, at: { radius: 60, angle: 260 } }
  - { master: rabbit, at: { radius: 60, angle: 310 } }
registration:
  bosses:
    - { kind: cap nut, size: M6, at: { radius: { fromRim: 12 }, angle: 35 } }
    - { kind: cap nut, size: M8, at: { radius: { fromRim: 13.7 }, angle: 185 } }
    - { kind: dome, size: 9, at: { radius: { fromRim: 11 }, angle: 285 } }
supports: auto
tabs: [{ angle: 235, width: 12, length: 6 }]
notches: [{}]
gates: straight
vents: straight
`;

test('one of each charm and an open mesh, mended and said so, make sound halves and build-ups', async () => {
  const { names, text } = await judged(bench.put('each.yaml', oneOfEach), 'out-each');
  expect(names).toEqual(
    expect.arrayContaining(['lower-half.stl', 'upper-half.stl', 'sprue-form.stl', 'tab-1.stl']),
  );
  expect(names.filter((name) => name.startsWith('build-up')).length).toBeGreaterThan(3);
  expect(text).toMatch(/repair\.holes-closed {2}rabbit/);
});
