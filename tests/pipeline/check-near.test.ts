import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checks } from '../../src/checks/index.ts';
import { compose, rotation, translation } from '../../src/geometry/index.ts';
import { type Kernel, loadKernel } from '../../src/kernel/index.ts';
import { TriangleTree } from '../../src/mesh/index.ts';
import { check, type Mold } from '../../src/mold/index.ts';
import {
  Cache,
  checkMold,
  checkNear,
  placeMold,
  readMasters,
  roughError,
  roughMold,
} from '../../src/pipeline/index.ts';
import { withDragged } from '../../src/preview/worker/with-dragged.ts';
import { bumpyMesh } from '../browser/bumpy-mesh.ts';
import { saysOf } from '../said.ts';

const plan = `process: rubber
disc: { diameter: 160, thickness: 14 }
sprue: {}
parting: { surface: flat }
masters:
  leaf: { file: leaf.stl, unit: mm }
placements:
  - { master: leaf, at: { radius: 45, angle: 0 }, sink: 3, id: one }
  - { master: leaf, at: { radius: 45, angle: 24 }, sink: 3, turn: 40, id: two }
  - { master: leaf, at: { radius: 45, angle: 180 }, sink: 3, id: far }
registration:
  bosses:
    - { kind: dome, size: 8, at: { radius: 60, angle: -8 } }
tabs:
  - { angle: 12, width: 20 }
limits: { wall: 12 }
`;

async function lay(kernel: Kernel): Promise<Mold> {
  const bytes = bumpyMesh(120, 90, 7);
  const read = await readMasters(
    {
      bytes: new TextEncoder().encode(plan),
      name: 'plan.yaml',
      files: async (name) => ({ bytes, name, outside: false }),
    },
    kernel,
  );
  if (!read.plan || !read.masters) throw new Error(saysOf(read.findings[0]));
  return placeMold(read.plan, read.masters, []).mold;
}

const kernel = await loadKernel();
const mold = await lay(kernel);

describe('one thing alone', () => {
  test.each(['one', 'two', 'boss-1', 'tab-1'])('%s: its figures are those of the whole report', (id) => {
    const report = checkMold(mold, [], kernel);
    const { figures, findings } = checkNear(mold, id, kernel);
    expect(figures.length).toBeGreaterThan(0);
    for (const { name, subject, value } of figures) {
      expect(subject.split(' ')).toContain(id);
      const same = report.figures.find((one) => one.name === name && one.subject === subject);
      expect(same?.value).toBe(value);
    }
    for (const { code, subject } of findings) {
      expect(report.findings.some((one) => one.code === code && one.subject === subject)).toBe(true);
    }
  });

  test('every wall of the report under its limit is among them', () => {
    const thin = checkMold(mold, [], kernel).findings.filter(
      (found) =>
        found.code.startsWith('walls.') && found.code !== 'walls.channel' && /\bone\b/.test(saysOf(found)),
    );
    expect(thin.length).toBeGreaterThan(0);
    const near = checkNear(mold, 'one', kernel).findings.map(saysOf);
    for (const found of thin) expect(near).toContain(saysOf(found));
  });
});

describe('what a unit is about', () => {
  const ids = [mold.placements, mold.bosses, mold.tabs, mold.notches].flat().map(({ id }) => id);

  test.each(checks.map((one) => [one.id, one] as const))('%s: what its figures name', (_, one) => {
    for (const { about, run } of one.units(mold)) {
      const { figures = [] } = run({ kernel });
      const named = new Set(figures.flatMap(({ subject }) => subject.split(' ')));
      // What is found for the mold as a whole may name any of its things.
      if (about.length === 0) expect(one.follows).toBe(false);
      else if (named.size > 0) for (const id of ids) expect(about.includes(id), id).toBe(named.has(id));
    }
  });

  test('has to be said, and whether it is asked while that is dragged', () => {
    const one = { id: 'one', title: 'one', processes: ['rubber'], run: () => ({}) } as const;
    // @ts-expect-error no `about`
    check({ ...one, follows: true, units: () => [{ subject: 'a', input: 1 }] });
    // @ts-expect-error no `follows`
    check({ ...one, units: () => [{ subject: 'a', about: ['a'], input: 1 }] });
  });
});

describe('reduced masters', () => {
  const rough = roughMold(mold, kernel);

  test('stay within half the stated error, by distances of all corners both ways', () => {
    expect(roughError).toBeLessThanOrEqual(0.1);
    const [{ mesh: whole }] = mold.masters;
    const [{ mesh: reduced }] = rough.masters;
    expect(reduced.triangles.length).toBeLessThan(whole.triangles.length / 2);
    for (const [from, to] of [
      [whole, reduced],
      [reduced, whole],
    ]) {
      const tree = new TriangleTree(to);
      let farthest = 0;
      for (let i = 0; i < from.positions.length; i += 3) {
        const [x, y, z] = from.positions.subarray(i, i + 3);
        farthest = Math.max(farthest, tree.distanceTo(x, y, z));
      }
      expect(farthest).toBeLessThanOrEqual(roughError / 2);
    }
  });

  test.each([0, 1, 2, 3])('give walls and covers within the stated error, moved by %d mm', (by) => {
    const moved = (of: Mold): Mold => ({
      ...of,
      placements: of.placements.map((one) =>
        one.id === 'one'
          ? { ...one, y: one.y + by, matrix: compose(translation(0, by, 0), one.matrix) }
          : one,
      ),
    });
    const exact = checkNear(moved(mold), 'one', kernel).figures;
    const about = checkNear(moved(rough), 'one', kernel).figures;
    expect(about.map(({ name, subject }) => `${name} ${subject}`)).toEqual(
      exact.map(({ name, subject }) => `${name} ${subject}`),
    );
    for (const [i, { value }] of exact.entries()) {
      expect(Math.abs(about[i].value - value)).toBeLessThanOrEqual(roughError);
    }
  });

  // The hand may turn, sink and bring together at will: what it is told stays within what is said of it.
  test('give them within the stated error wherever one is held', () => {
    const held = fc.record({
      x: fc.double({ min: -4, max: 12, noNaN: true }),
      y: fc.double({ min: -12, max: 8, noNaN: true }),
      z: fc.double({ min: -3, max: 3, noNaN: true }),
      turn: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
    });
    const cache = new Cache();
    fc.assert(
      fc.property(held, ({ x, y, z, turn }) => {
        const [{ x: atX, y: atY }] = mold.placements;
        const matrix = compose(
          translation(atX + x, atY + y, z),
          rotation('z', turn),
          translation(-atX, -atY, 0),
        );
        const at = (of: Mold): Mold => withDragged(of, { kind: 'placement', id: 'one', matrix });
        const exact = checkNear(at(mold), 'one', kernel).figures;
        const about = checkNear(at(rough), 'one', kernel, cache).figures;
        const named = ({ name, subject }: { name: string; subject: string }) => `${name} ${subject}`;
        const known = new Map(about.map((one) => [named(one), one.value]));
        for (const one of exact) {
          // A wall just at twice the limit may be on either side of it.
          const value = known.get(named(one)) ?? 2 * mold.limits.wall;
          expect(Math.abs(value - one.value), named(one)).toBeLessThanOrEqual(roughError);
        }
      }),
      { numRuns: 25, seed: 11 },
    );
  });
});
