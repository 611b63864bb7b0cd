import { describe, expect, it } from 'vitest';
import { shownCavity } from '../../src/fill/index.ts';
import { compose, rotation, translation } from '../../src/geometry/index.ts';
import type { Channel, Mold } from '../../src/mold/index.ts';
import { emptyMold, smallSprue, withMaster } from '../checks/small-mold.ts';
import { type Box, roomOf } from './shapes.ts';

/** A block 70 mm from the axis, a quarter turn round from +x, with a blind pocket toward the axis on its left. */
const boxes: readonly Box[] = [
  [
    [-10, -5, -2],
    [10, 5, 2],
  ],
  [
    [-14, 2.5, -2],
    [-9, 5, 2],
  ],
];
const mesh = roomOf(boxes);
const turned = compose(rotation('z', Math.PI / 2), translation(70, 0, 0));

const gate = (width: number): Channel => {
  const run = [14, 62].map((y) => ({ at: [0, y] as const, width, depth: width / 2 }));
  const cut = { laps: [2, 2], section: { kind: 'half-round' }, half: 'upper' } as const;
  return { id: 'gate-part-1', kind: 'gate', placement: 'part-1', run, ...cut };
};
const made = withMaster({ ...emptyMold, sprue: smallSprue }, 'part', mesh, turned);
const mold: Mold = {
  ...made,
  placements: made.placements.map((one) => ({ ...one, x: turned[12], y: turned[13] })),
  bench: { alloy: { name: 'tin' }, spin: { speedRpm: 480 } },
};

describe('a cavity to be shown', () => {
  const cavity = shownCavity(mold, 'part-1');
  if (!cavity) throw new Error('not known');
  const filled = cavity.fill([gate(4)]);
  if (!filled) throw new Error('no gate opens into it');

  it('is filled from the rim inward, in the order of filling from 0 to 1', () => {
    const { order } = filled;
    expect([Math.min(...order), Math.max(...order)]).toEqual([0, 1]);
    // In the mold frame the block stands along +y.
    const [far, near] = cavity.cellsAt(Float32Array.of(0, 80, 0, 0, 60, 0));
    expect(order[far]).toBeLessThan(0.1);
    expect(order[near]).toBeGreaterThan(0.7);
  });

  it('has its air in the mold frame, with the cells it stands in and what frees it', () => {
    const [air] = filled.air;
    expect(air).toMatchObject({ stays: 'all', where: 'room', frees: { by: 'vent' } });
    // The pocket is to the left seen from the axis outward: toward -x here.
    expect(air.place[0]).toBeLessThan(-2.5);
    expect(air.place[1]).toBeCloseTo(56.2, 0);
    for (const c of air.cells) expect(cavity.middles[3 * c]).toBeLessThan(-2);
    const { cell } = cavity;
    expect(air.cells.length * cell ** 3).toBeGreaterThan(air.usual);
  });

  it('knows the nearest cell of each vertex of its surface, and none for a point far away', () => {
    const positions = placedPositions();
    const cells = cavity.cellsAt(positions);
    for (const [p, c] of cells.entries()) {
      const away = [0, 1, 2].map((x) => cavity.middles[3 * c + x] - positions[3 * p + x]);
      expect(Math.hypot(...away)).toBeLessThan(cavity.cell * Math.sqrt(3));
    }
    expect([...cavity.cellsAt(Float32Array.of(0, 0, 0))]).toEqual([-1]);
  });

  it('filled again with a narrow gate has a band under it, freed by a wider one', () => {
    const under = cavity.fill([gate(2)])?.air.find(({ where }) => where === 'gate');
    expect(under?.frees.by).toBe('gate');
    if (under?.frees.by !== 'gate') return;
    expect(cavity.fill([gate(1.05 * under.frees.width)])?.air.some(({ where }) => where === 'gate')).toBe(
      false,
    );
  });

  it('is none where nothing opens into it, or the plan says too little', () => {
    expect(cavity.fill([])).toBeUndefined();
    expect(shownCavity({ ...mold, bench: {} }, 'part-1')).toBeUndefined();
    expect(shownCavity(mold, 'part-2')).toBeUndefined();
  });
});

function placedPositions(): Float64Array {
  const positions = new Float64Array(mesh.positions.length);
  for (let p = 0; p < positions.length; p += 3) {
    const [x, y, z] = mesh.positions.subarray(p, p + 3);
    positions.set([-y, x + 70, z], p);
  }
  return positions;
}
