import { describe, expect, test } from 'vitest';
import { compose, type Kernel, loadKernel, translation } from '../../src/kernel/index.ts';
import { TriangleTree } from '../../src/mesh/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import {
  checkMold,
  checkNear,
  layMold,
  readMasters,
  roughError,
  roughMold,
} from '../../src/pipeline/index.ts';
import { bumpyMesh } from '../browser/bumpy-mesh.ts';

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
  if (!read.plan || !read.masters) throw new Error(read.findings[0].says);
  return layMold(read.plan, read.masters, []).mold;
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
      ({ code, says }) => code.startsWith('walls.') && code !== 'walls.channel' && /\bone\b/.test(says),
    );
    expect(thin.length).toBeGreaterThan(0);
    const near = checkNear(mold, 'one', kernel).findings.map(({ says }) => says);
    for (const { says } of thin) expect(near).toContain(says);
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
});
