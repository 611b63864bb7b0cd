import { describe, expect, it } from 'vitest';
import { freeLength } from '../../../src/checks/release/free-length.ts';
import { support } from '../../../src/checks/release/support.ts';
import {
  compose,
  joinMeshes,
  rotation,
  scaling,
  type TriangleMesh,
  translation,
} from '../../../src/geometry/index.ts';
import type { Mold, PartingSurface } from '../../../src/mold/index.ts';
import { box, single } from '../../revolved-solids.ts';
import { emptyMold, figureOf, runCheck, withMaster } from '../small-mold.ts';

/** A block on the plane with a shelf 10 mm long, 1 mm thick, 2 mm over the plane, as two boxes that share a wall. */
const shelf: TriangleMesh = joinMeshes([
  single(box([-6, -2, -2], [0, 2, 3])),
  single(box([0, -2, 2], [10, 2, 3])),
]);
const withShelf = (...matrices: Parameters<typeof withMaster>[3][]): Mold =>
  withMaster(emptyMold, 'shelf', shelf, ...matrices);

/** Rises to z = 2 from x0 on: a hand-made surface under the shelf. */
function raised(from: number, to: number): PartingSurface {
  const [nx, ny, cell] = [400, 200, 0.25];
  const heights = new Float32Array(nx * ny);
  for (let k = 0; k < heights.length; k++) {
    const x = 30 + (k % nx) * cell;
    heights[k] = x >= from && x <= to ? 2 : 0;
  }
  const sheet = { positions: new Float32Array(), triangles: new Uint32Array() };
  return { flat: false, cell, x0: 30, y0: -25, nx, ny, heights, sheet, error: 0 };
}

describe('support', () => {
  it('warns of a slender shelf with nothing under it, at its end', async () => {
    const { findings, ...rest } = await runCheck(support, withShelf(translation(60, 0, 0)));
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['support.free', 'warn']]);
    expect(findings[0].values.measured).toBeCloseTo(10, 0);
    expect(findings[0].place?.[0]).toBeCloseTo(70, 0);
    expect(findings[0].place?.[2]).toBeCloseTo(2, 5);
    expect(figureOf({ findings, ...rest }, 'support.free', 'shelf-1')).toBeCloseTo(40, -0.5);
    expect(figureOf({ findings, ...rest }, 'support.held', 'shelf-1')).toBe(0);
  });

  it('ticks off what a build-up holds, and only what it holds', async () => {
    const mold = {
      ...withShelf(translation(60, 0, 0)),
      supports: [{ placement: 'shelf-1', clearance: 0.2 }],
    };
    const whole = await runCheck(support, { ...mold, parting: raised(60, 75) });
    expect(whole.findings).toEqual([]);
    expect(figureOf(whole, 'support.held', 'shelf-1')).toBeCloseTo(40, -0.5);
    expect(figureOf(whole, 'support.free', 'shelf-1')).toBe(0);
    // One that ends after 3 mm leaves 7.
    const part = await runCheck(support, { ...mold, parting: raised(60, 63) });
    expect(part.findings).toHaveLength(1);
    expect(part.findings[0].values.measured).toBeGreaterThan(6.5);
    expect(part.findings[0].values.measured).toBeLessThan(7.5);
    // A raised surface without a build-up holds nothing.
    const none = await runCheck(support, { ...mold, supports: [], parting: raised(60, 75) });
    expect(none.findings).toHaveLength(1);
  });

  it('only notes what hangs under the plane with nothing over it', async () => {
    const { findings } = await runCheck(
      support,
      withShelf(compose(translation(60, 0, 0), rotation('x', Math.PI))),
    );
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['support.free', 'note']]);
  });

  it('leaves a stout shelf alone, and a block on the plane', async () => {
    // Three times as thick and half as long: 5 / 3.
    const stout = compose(translation(60, 0, -4), scaling(1, 1, 3), scaling(0.5, 1, 1));
    expect(await runCheck(support, withShelf(stout))).toMatchObject({ findings: [], figures: [] });
    const block = withMaster(emptyMold, 'block', single(box([-4, -3, -2], [4, 3, 2])), translation(60, 0, 0));
    expect(await runCheck(support, block)).toMatchObject({ findings: [], figures: [] });
  });

  it('is for rubber', () => {
    expect(support.units({ ...withShelf(translation(60, 0, 0)), process: 'rigid' })).toEqual([]);
  });
});

describe('free length', () => {
  it('goes round corners and not across them', () => {
    // An L of 3 wide arms on a grid of 1 mm, held along its foot.
    const [nx, ny] = [20, 20];
    const mask = new Uint8Array(nx * ny);
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++) {
        if (i < 3) mask[j * nx + i] = j < 1 ? 2 : 1;
        else if (j > 16) mask[j * nx + i] = 1;
      }
    const length = freeLength(mask, { nx, ny, cell: 1 });
    const end = length[17 * nx + 19];
    // Up 17, then 17 more from the inner corner at (2, 17).
    expect(end).toBeGreaterThanOrEqual(34 - 1e-9);
    expect(end).toBeLessThan(35);
    expect(length[5 * nx + 10]).toBe(Number.POSITIVE_INFINITY);
  });
});
