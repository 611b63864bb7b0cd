import { describe, expect, it } from 'vitest';
import { coverOfFixtures } from '../../src/checks/cover/cover-fixtures.ts';
import type { Paper } from '../../src/export/shop-sheet/paper.ts';
import { sideView } from '../../src/export/shop-sheet/side-view.ts';
import type { Boss, Process } from '../../src/mold/index.ts';
import { emptyMold, figureOf, nutAt, runCheck } from '../checks/small-mold.ts';

type Box = readonly [x: number, y: number, width: number, height: number];

/** A sheet so wide that all is drawn 1:1, which keeps the boxes drawn on it. */
function blankSheet(): { readonly paper: Paper; readonly boxes: Box[] } {
  const boxes: Box[] = [];
  const pen = {
    rect: (...box: Box) => {
      boxes.push(box);
      return pen;
    },
    lineWidth: () => pen,
    strokeColor: () => pen,
    stroke: () => pen,
  };
  const nothing = () => {};
  const paper = { pen, width: 400, left: 0, right: 400, y: 0, section: nothing, write: nothing };
  return { paper: paper as unknown as Paper, boxes };
}

const cone: Boss = {
  ...nutAt('cone', 60, 0),
  kind: 'cone',
  size: '12',
  acrossFlats: 0,
  rootDepth: 6,
  headRadius: 6,
  headHeight: 7.2,
  clearance: 0.25,
};

describe('the side view of the shop sheet', () => {
  it.each(['rubber', 'rigid', 'poured'] as const)(
    'draws what a boss takes out of %s halves as the check on cover counts it',
    async (process: Process) => {
      const mold = { ...emptyMold, process, bosses: [cone] };
      const { paper, boxes } = blankSheet();
      sideView(paper, mold);
      const [upper, lower, boss] = boxes;
      const report = await runCheck(coverOfFixtures, mold);
      expect(upper[3]).toBeCloseTo(mold.disc.upper, 9);
      // Down the page: the upper face, the boss, the lower face.
      expect(boss[1] - upper[1]).toBeCloseTo(figureOf(report, 'cover.upper', 'cone'), 9);
      expect(lower[1] + lower[3] - boss[1] - boss[3]).toBeCloseTo(figureOf(report, 'cover.lower', 'cone'), 9);
    },
  );

  it('draws a cap nut as wide as its corners', () => {
    const { paper, boxes } = blankSheet();
    sideView(paper, { ...emptyMold, bosses: [nutAt('nut', 10, 0)] });
    expect(boxes[2][2]).toBeCloseTo((2 * 13) / Math.sqrt(3), 9);
  });
});
