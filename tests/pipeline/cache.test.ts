import { beforeAll, describe, expect, it, test } from 'vitest';
import { type Kernel, loadKernel } from '../../src/kernel/index.ts';
import { buildMold, Cache, readMold } from '../../src/pipeline/index.ts';
import { binaryStl, type Face } from '../mesh/mesh-files.ts';
import { ball } from '../mesh/rough-shapes.ts';
import { saysOf } from '../said.ts';

describe('the cache', () => {
  it('makes a thing once', () => {
    const cache = new Cache();
    let made = 0;
    const make = () => ++made;
    expect([cache.memoize('a', make), cache.memoize('a', make), cache.memoize('b', make)]).toEqual([1, 1, 2]);
    expect([cache.hits, cache.misses]).toEqual([1, 2]);
  });

  it('forgets what was used least recently', () => {
    const cache = new Cache(2);
    const make = (value: string) => () => value;
    for (const key of ['a', 'b', 'a', 'c']) cache.memoize(key, make(key));
    expect(cache.hits).toBe(1);
    cache.memoize('a', make('a'));
    expect(cache.hits).toBe(2);
    cache.memoize('b', make('b'));
    expect(cache.hits).toBe(2);
  });

  it('keeps nothing of what failed', () => {
    const cache = new Cache();
    const fail = () => {
      throw new Error('no');
    };
    expect(() => cache.memoize('a', fail)).toThrow('no');
    expect(cache.memoize('a', () => 1)).toBe(1);
  });

  it('keeps what took long in its store, each thing once, and finds it there in a later run', () => {
    const kept = new Map<string, unknown>();
    const store = {
      read: (key: string) => kept.get(key),
      write: (key: string, value: unknown) => void kept.set(key, value),
    };
    const lasting = <T>(ms: number, value: T): T => {
      const end = performance.now() + ms;
      while (performance.now() < end);
      return value;
    };
    const first = new Cache(10, store);
    const made = first.memoize('outer', () => first.memoize('inner', () => lasting(40, 'long')));
    first.memoize('short', () => 'short');
    // What took long within the outer one is kept by itself.
    expect([made, [...kept]]).toEqual(['long', [['inner', 'long']]]);
    const later = new Cache(10, store);
    expect(later.memoize('inner', () => 'anew')).toBe('long');
    expect([later.hits, later.misses]).toEqual([1, 0]);
  });

  it('remembers that a thing is undefined', () => {
    const cache = new Cache();
    cache.memoize('a', () => undefined);
    expect(cache.memoize('a', () => 1)).toBe(undefined);
  });
});

/** A cache that tells what was made anew: the work's id, which is the first word of a key. */
class Watched extends Cache {
  made: string[] = [];

  override memoize<T>(key: string, make: () => T): T {
    return super.memoize(key, () => {
      this.made.push(key.split(' ', 1)[0]);
      return make();
    });
  }
}

const { points, faces } = ball(5, 16);
const seed = binaryStl(faces.map(([a, b, c]): Face => [points[a], points[b], points[c]]));

const plan = `title: Seeds
process: rubber
disc: { diameter: 120, thickness: 14 }
sprue: {}
parting: { surface: flat }
masters:
  seed: { file: seed.stl, unit: mm }
  button: { length: 10, width: 10, above: 3, below: 1 }
placements:
  - { id: one, master: seed, at: { radius: 30, angle: 0 } }
  - { id: two, master: seed, at: { radius: 30, angle: 30 } }
  - { id: far, master: button, at: { radius: 40, angle: 180 } }
registration:
  bosses:
    - { kind: cap nut, size: M6, at: { radius: 47, angle: 80 } }
    - { kind: cap nut, size: M5, at: { radius: 47, angle: 220 } }
    - { kind: cap nut, size: M6, at: { radius: 47, angle: 300 } }
tabs: [{ angle: 100, width: 12 }]
notches: [{ angle: 10 }]
fixture: { chordError: 0.1 }
`;

describe('a second run', () => {
  let kernel: Kernel;
  beforeAll(async () => {
    kernel = await loadKernel();
  });

  const files = async () => ({ bytes: seed, name: 'seed.stl', outside: false });

  async function run(text: string, cache?: Cache) {
    const bytes = new TextEncoder().encode(text);
    const options = cache ? { cache } : {};
    const { mold, findings } = await readMold({ bytes, name: 'plan.yaml', files }, kernel, options);
    if (!mold) throw new Error(findings.map(saysOf).join('\n'));
    const { build } = await buildMold(mold, findings, { planBytes: bytes, version: '0' }, kernel, options);
    return build;
  }

  /** What is made anew in a second run after `from` in the plan became `to`, each work named as often as it ran. */
  async function afterEdit(from: string, to: string) {
    const cache = new Watched();
    await run(plan, cache);
    const first = cache.made;
    cache.made = [];
    const edited = plan.replace(from, to);
    const build = await run(edited, cache);
    return { first, again: cache.made.sort(), build, edited };
  }

  test('of the same plan makes nothing anew', async () => {
    const { first, again } = await afterEdit('', '');
    expect(again).toEqual([]);
    expect(first).toEqual(
      expect.arrayContaining(['import', 'halves', 'disc-blank', 'sprue-form', 'cover', 'walls']),
    );
  });

  test('after one placement was moved makes anew only what looks at it', async () => {
    const { again } = await afterEdit('radius: 40, angle: 180', 'radius: 41, angle: 180');
    // Its own cover, undercut, support and walls to rim, nearest neighbor and nearest boss, the halves, the plate that
    // shows where all lie, and the pressure, which goes by where all the cavities stand; not the masters, the fixtures, other pairs, or the least
    // cover of all, which goes by heights.
    const own = [
      'cover',
      // To the nearest neighbor and the nearest boss.
      'distance',
      'distance',
      // As the pressure, by all that metal stands in.
      'flash',
      'halves',
      'layout-plate',
      // 'mold halves': their bodies, once for all that look at them.
      'mold',
      'pressure',
      'release',
      // What the pressure allows.
      'speed',
      'support',
      'walls',
      'walls-bosses',
      'walls-rim',
    ];
    expect(again).toEqual(own);
  });

  test('after one of two neighbors was moved measures the wall between them again', async () => {
    const { again } = await afterEdit('radius: 30, angle: 30', 'radius: 31, angle: 30');
    // With its neighbor, and with the third, whose nearest it is.
    expect(again.filter((work) => work === 'walls')).toHaveLength(2);
    expect(again).not.toContain('import');
    expect(again).not.toContain('bosses');
  });

  test('after a limit was changed makes no solid anew', async () => {
    const { again } = await afterEdit('notches:', 'limits: { cover: 4 }\nnotches:');
    expect(again).not.toContain('halves');
    expect(again).toContain('cover');
  });

  test('after the limit of walls was changed judges them anew and measures none', async () => {
    const { again } = await afterEdit('notches:', 'limits: { wall: 2.5 }\nnotches:');
    expect(again).toContain('walls');
    expect(again).not.toContain('distance');
  });

  test('after a comment was added makes nothing anew', async () => {
    const { again } = await afterEdit('placements:', '# more to come\nplacements:');
    expect(again).toEqual([]);
  });

  // Lines are no part of what anything is made from: only what is said of them moves.
  test('after lines were put before all else makes nothing anew, and names the new lines', async () => {
    const full = `${plan}can: { diameter: 121.5, depth: 28 }
closing: { pressure: 1.5 MPa, bolts: { size: M8, count: 6, circle: 150 } }
machine: { maxSpeed: 1000 }
rubber: { density: 1100 kg/m3 }
alloy: { density: 7000 kg/m3 }
spin: { speed: 400 }
cure: { temperature: 155 }
gates: [{ placements: [one] }]
vents: straight
supports: auto
`;
    const cache = new Watched();
    const before = await run(full, cache);
    const lined = before.report.findings.filter(({ at }) => at);
    expect(new Set(lined.map(({ subject }) => subject)).size).toBeGreaterThan(4);
    cache.made = [];
    const after = await run(`# one\n# two\n${full}`, cache);
    expect(cache.made).toEqual([]);
    expect(after.report.findings).toEqual(
      before.report.findings.map((one) =>
        one.at ? { ...one, at: { ...one.at, line: one.at.line + 2 } } : one,
      ),
    );
  });

  test('after a fixture was made finer makes the solids anew, not the masters or walls', async () => {
    const { again } = await afterEdit('chordError: 0.1', 'chordError: 0.08');
    expect(again).toEqual(expect.arrayContaining(['halves', 'disc-blank', 'sprue-form', 'plug', 'bosses']));
    for (const other of ['import', 'walls', 'walls-rim', 'tab']) expect(again).not.toContain(other);
  });

  test('after a limit was changed finds no parting surface anew, after a move it does', async () => {
    const curved = plan.replace('surface: flat', 'surface: follow, cell: 0.5');
    const cache = new Watched();
    await run(curved, cache);
    expect(cache.made).toContain('parting');
    cache.made = [];
    await run(curved.replace('notches:', 'limits: { cover: 4 }\nnotches:'), cache);
    expect(cache.made).not.toContain('parting');
    expect(cache.made).not.toContain('halves');
    cache.made = [];
    await run(curved.replace('radius: 40, angle: 180', 'radius: 41, angle: 180'), cache);
    expect(cache.made).toContain('parting');
  });

  test('with a cache gives what a run without one gives', async () => {
    const { build, edited } = await afterEdit('radius: 30, angle: 30', 'radius: 31, angle: 30');
    const plain = await run(edited);
    expect(build.report).toEqual(plain.report);
    expect(build.solids.map(({ name }) => name)).toEqual(plain.solids.map(({ name }) => name));
    for (const [i, { bytes }] of build.solids.entries())
      expect(Buffer.compare(bytes, plain.solids[i].bytes), build.solids[i].name).toBe(0);
  });

  test('after the file of a master changed reads it again', async () => {
    const cache = new Watched();
    await run(plan, cache);
    cache.made = [];
    const larger = points.map(([x, y, z]): Face[number] => [x * 1.001, y * 1.001, z * 1.001]);
    const grown = binaryStl(faces.map(([a, b, c]): Face => [larger[a], larger[b], larger[c]]));
    const bytes = new TextEncoder().encode(plan);
    const changed = async () => ({ bytes: grown, name: 'seed.stl', outside: false });
    await readMold({ bytes, name: 'plan.yaml', files: changed }, kernel, { cache });
    expect(cache.made).toContain('import');
  });
});
