import { expect, test } from 'vitest';
import { moveMesh, translation } from '../../src/geometry/index.ts';
import { findPartingSurface } from '../../src/mold/index.ts';
import { partingDefaults } from '../../src/plan/index.ts';
import { asMesh, box } from '../mesh/rough-shapes.ts';

/** What is found of a block 10 mm wide and 4 high whose top stands so far above the plane, where the surface must be flat. */
const found = (above: number, held = 8) =>
  findPartingSurface({
    discRadius: 20,
    masters: [{ id: 'block', mesh: moveMesh(asMesh(box([10, 10, 4])), translation(-5, -5, above - 4)) }],
    pins: [{ x: 0, y: 0, radius: held }, { outside: 19 }],
    ...partingDefaults,
    limitUp: 10,
    limitDown: 10,
  }).findings.map(({ code, severity, subject }) => [code, severity, subject]);

test('a parting surface that runs a hair under the skin of a master is found: the flake would tear off', () => {
  expect(found(0.01)).toEqual([['mold.parting-grazes', 'warn', 'block']]);
});

test('one that is free to keep off, or runs well under it, or along it, is not', () => {
  expect(found(0.01, 0)).toEqual([]);
  expect(found(1)).toEqual([]);
  expect(found(0)).toEqual([]);
});
