import { expect } from 'vitest';
import { loadKernel } from '../../../src/kernel/index.ts';
import { type RepairOptions, repairMesh } from '../../../src/mesh/index.ts';
import { type Shape, shapeOf, soup, unpairedEdges, volumeOf } from '../rough-shapes.ts';

export const kernel = await loadKernel();

export const bring = (shape: Shape, options: Partial<RepairOptions> = {}) =>
  repairMesh(soup(shape), { subject: 'snail', unit: 'mm', ...options }, kernel);

export const codesOf = (outcome: ReturnType<typeof bring>): string[] =>
  outcome.findings.map(({ code }) => code);

/** The volume of the mesh that came out, summed by code of the test's own; fails where none came out. */
export function outVolume(outcome: ReturnType<typeof bring>): number {
  if (!outcome.mesh) throw new Error(`no mesh: ${codesOf(outcome).join(' ')}`);
  expect(unpairedEdges(outcome.mesh)).toBe(0);
  return volumeOf(shapeOf(outcome.mesh));
}
