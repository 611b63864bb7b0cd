import { describe, expect, test } from 'vitest';
import { compose, moveMesh, rotation, type TriangleMesh, translation } from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { straightGate, straightVent } from '../../src/mold/channels.ts';

const kernel = await loadKernel();
const spec = {
  width: 3,
  depth: 1.5,
  endWidth: 3,
  endDepth: 1.5,
  section: { kind: 'half-round' },
  half: 'upper',
} as const;

/** A prism over an outline about (0, 0), put at radius 60 on +x, then all turned about the axis. */
function target(outline: readonly (readonly [number, number])[], turnRad = 0) {
  const prism = kernel.scope((scope) => scope.toMesh(scope.extrude([outline], -2, 2, 'prism')));
  const mesh: TriangleMesh = moveMesh(prism, compose(rotation('z', turnRad), translation(60, 0, 0)));
  return { id: 'one', x: 60 * Math.cos(turnRad), y: 60 * Math.sin(turnRad), mesh };
}

const square = [
  [-5, -5],
  [5, -5],
  [5, 5],
  [-5, 5],
] as const;
/** A head on the radius and a stalk beside it that reaches 20 mm further in. */
const bent = [
  [-5, -5],
  [5, -5],
  [5, 5],
  [-5, 5],
  [-25, 5],
  [-25, 4],
  [-5, 4],
] as const;

describe.each([0, 1.1, 4])('turned by %s rad', (turn) => {
  test('a gate runs along the radius from inside the well into the face it meets', () => {
    const gate = straightGate('gate-one', target(square, turn), 20, spec);
    expect(gate && Math.hypot(...gate.run[0].at)).toBeCloseTo(18.5, 4);
    expect(gate && Math.hypot(...gate.run[1].at)).toBeCloseTo(55 + 1.5, 4);
    expect(gate && Math.atan2(gate.run[1].at[1], gate.run[1].at[0])).toBeCloseTo(
      Math.atan2(Math.sin(turn), Math.cos(turn)),
      6,
    );
  });

  test('a gate goes to the end of a stalk beside the radius instead of running along it', () => {
    const gate = straightGate('gate-one', target(bent, turn), 20, spec);
    // The stalk's corner nearest the axis is at (60 - 25, 4).
    expect(gate && Math.hypot(...gate.run[1].at)).toBeCloseTo(Math.hypot(35, 4) + 1.5, 4);
  });

  test('a vent runs from the outer face through the rim', () => {
    const vent = straightVent('vent-one', target(square, turn), 100, spec);
    expect(vent && Math.hypot(...vent.run[0].at)).toBeCloseTo(65 - 1.5, 4);
    expect(vent && Math.hypot(...vent.run[1].at)).toBeCloseTo(101.5, 4);
  });
});

test('no gate where the master reaches the well, no vent where it passes the rim', () => {
  expect(straightGate('gate-one', target(square), 56, spec)).toBeUndefined();
  expect(straightVent('vent-one', target(square), 64, spec)).toBeUndefined();
});
