import { expect, it } from 'vitest';
import { drawDisc } from '../../src/export/shop-sheet/disc-view.ts';
import type { Paper } from '../../src/export/shop-sheet/paper.ts';
import { notchCorners } from '../../src/mold/index.ts';
import { emptyMold } from '../checks/small-mold.ts';

/** A sheet that keeps the corners drawn on it, in mm of the disc. */
function blankSheet() {
  const corners: (readonly [number, number])[] = [];
  const keep = (x: number, y: number) => {
    corners.push([x, -y]);
    return pen;
  };
  const pen: unknown = new Proxy(
    {},
    {
      get: (_, name) =>
        name === 'moveTo' || name === 'lineTo' ? keep : name === 'widthOfString' ? () => 5 : () => pen,
    },
  );
  return { paper: { pen, write: () => {} } as unknown as Paper, corners };
}

it('draws a witness notch with the round root it is cut with', () => {
  const notch = { id: 'notch-1', angleRad: 0.5, width: 6, depth: 4 };
  const { paper, corners } = blankSheet();
  drawDisc(
    paper,
    { mold: { ...emptyMold, notches: [notch] }, shadows: [], buildUps: [] },
    { x: 0, y: 0, scale: 1 },
  );
  const radius = emptyMold.disc.radius;
  for (const [x, y] of notchCorners(notch, radius))
    expect(Math.min(...corners.map(([u, v]) => Math.hypot(u - x, v - y)))).toBeLessThan(1e-9);
});
