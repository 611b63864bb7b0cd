import { describe, expect, it } from 'vitest';
import { airWithRandomVents } from '../../bench/random-vents.ts';
import { changeOf, proposeChannels } from '../../src/fill/index.ts';
import { leastPocket } from '../../src/fill/pockets.ts';
import { measureMesh } from '../../src/mesh/index.ts';
import { drawAnew, type Master, resolveLayout } from '../../src/mold/index.ts';
import { readPlan, writeChannels } from '../../src/plan/index.ts';
import { type Box, roomOf } from './shapes.ts';

/** A bar along the radius with a blind arm toward the axis on each side: air stays in both. */
const boxes: readonly Box[] = [
  [
    [-12, -3, -2],
    [12, 3, 2],
  ],
  [
    [-2, -9, -2],
    [2, 9, 2],
  ],
  [
    [-8, 6, -2],
    [2, 9, 2],
  ],
  [
    [-8, -9, -2],
    [2, -6, 2],
  ],
];

const planWith = (lists: string): string => `process: rubber
disc: { diameter: 250 }
sprue: {}
masters:
  part: { file: part.stl, unit: mm }
placements:
  - { master: part, ring: { count: 1, radius: 70 }, sink: 2 }
alloy: { name: tin }
spin: { speed: 480 }
# Cut with the knife.
${lists}
# The end.
`;

const mesh = roomOf(boxes);
const master: Master = { id: 'part', kind: 'mesh', mesh, measures: measureMesh(mesh), estimated: false };

function laid(text: string) {
  const { plan } = readPlan(text, 'plan');
  if (!plan) throw new Error(`unreadable: ${JSON.stringify(readPlan(text, 'plan').findings)}`);
  return { plan, ...resolveLayout(plan, [master]) };
}

type Known = ReturnType<typeof propose>;
const known = new Map<string, Known>();
function proposedFor(text: string): Known {
  const found = known.get(text) ?? propose(text);
  known.set(text, found);
  return found;
}

function propose(text: string) {
  const { plan, mold } = laid(text);
  const proposed = proposeChannels(plan, mold);
  if ('missing' in proposed) throw new Error(`missing ${proposed.missing}`);
  return { plan, proposed };
}

function written(text: string): string {
  const { plan, proposed } = proposedFor(text);
  const why = { gate: () => 'why a gate', way: () => 'why a vent' };
  const edited = writeChannels(text, changeOf(plan, proposed, why));
  if ('fault' in edited) throw new Error(JSON.stringify(edited.fault));
  return edited.text;
}

const usual = (places: readonly { readonly volumes: readonly number[] }[] = []): number[] =>
  places.map(({ volumes }) => volumes[0]);
const total = (volumes: readonly number[]): number => volumes.reduce((sum, one) => sum + one, 0);

const plain = 'gates:\n  - { placements: [part], width: 4, depth: 2 } # with the wide blade';

describe('gates and vents proposed', () => {
  it('leave no pocket that a vent can reach, and fewer over the whole range', () => {
    const [{ placements, ways, before, after }] = proposedFor(planWith(plain)).proposed.proposals;
    expect(placements).toEqual(['part-1']);
    expect(total(usual(before?.places))).toBeGreaterThan(50);
    expect(usual(after?.places).filter((volume) => volume >= 0.5)).toEqual([]);
    expect(after?.places.length).toBeLessThan(before?.places.length ?? 0);
    expect(ways.length).toBe(2);
  });

  it('are written as entries with comments kept, drawn without a fault, and stay when proposed anew', () => {
    const text = planWith(plain);
    const after = written(text);
    for (const comment of ['# Cut with the knife.', '# The end.', '# why a gate', '# why a vent'])
      expect(after).toContain(comment);
    const { plan, mold, findings } = laid(after);
    expect(findings).toEqual(laid(text).findings);
    expect(plan.vents).toHaveLength(2);
    expect(mold.channels).toHaveLength(3);
    expect(written(after)).toBe(after);
  });

  it('leave what somebody chose as it is', () => {
    const chosen = 'gates:\n  - { placements: [part], entry: outer, path: routed, width: 4, depth: 2 }';
    const after = written(planWith(chosen));
    expect(after).toContain(chosen);
    expect(proposedFor(planWith(chosen)).proposed.proposals[0].gate).toBeUndefined();
  });

  it('keep the plan’s own gate where none keeps its walls, and vent what it leaves', () => {
    const crowded = `${planWith(plain).replace('count: 1', 'count: 6')}limits: { wall: 22 }\n`;
    const { lists, proposals } = proposedFor(crowded).proposed;
    expect(lists.gates.flatMap(({ placements }) => placements)).toHaveLength(6);
    expect(proposals[0].gate).toBeUndefined();
    expect(proposals[0].after?.gates).toHaveLength(1);
  });

  it('let out several times the air that as many by chance let out', () => {
    const { plan, mold } = laid(planWith(plain));
    const [one] = proposedFor(planWith(plain)).proposed.proposals;
    const left = Math.max(leastPocket, total(usual(one.after?.places)));
    const factor = airWithRandomVents(mold, drawAnew(plan, mold), one, 7) / left;
    expect(one.ways).toHaveLength(2);
    expect(factor).toBeGreaterThan(2);
  });

  it('are written where the plan has no list, and where it only says straight', () => {
    for (const lists of ['', 'gates: straight\nvents: straight']) {
      const after = written(planWith(lists));
      expect(laid(after).plan.gates).toHaveLength(1);
      expect(after).toContain('# The end.');
    }
  });
});
