import { expect, test } from 'vitest';
import { draft } from '../../src/checks/release/draft.ts';
import { release } from '../../src/checks/release/release.ts';
import { translation } from '../../src/geometry/index.ts';
import { emptyMold, figureOf, runCheck, withMaster } from '../checks/small-mold.ts';
import { ball, single } from '../revolved-solids.ts';

const bead = single(ball(5, [0, 0, 0]));

// Closed form. A ball of radius R raised by h over the plane, h < R: outside the circle in which the plane cuts it the
// upper half has material under the ball, which would have to pass through it. The air between plane and ball is
// 2 pi integral over r from sqrt(R^2 - h^2) to R of r (h - sqrt(R^2 - r^2)) = pi h^3 - 2/3 pi h^3 = pi h^3 / 3.
test('undercut.upper and undercut.share of a raised ball are pi h^3 / 3 and h^3 / (4 R^3)', async () => {
  const h = 2;
  const report = await runCheck(release, withMaster(emptyMold, 'bead', bead, translation(60, 0, h)));
  const [lower, upper] = [
    figureOf(report, 'undercut.lower', 'bead-1'),
    figureOf(report, 'undercut.upper', 'bead-1'),
  ];
  expect(upper / ((Math.PI * h ** 3) / 3)).toBeCloseTo(1, 1);
  expect(lower).toBeCloseTo(0, 6);
  expect(figureOf(report, 'undercut.share', 'bead-1') / (h ** 3 / (4 * 5 ** 3))).toBeCloseTo(1, 1);
  expect(figureOf(report, 'undercut.depth-upper', 'bead-1')).toBeLessThanOrEqual(h);
  expect(figureOf(report, 'undercut.depth-upper', 'bead-1')).toBeGreaterThan(0.5 * h);
});

test('undercut.lower of a sunk ball is the same, mirrored', async () => {
  const report = await runCheck(release, withMaster(emptyMold, 'bead', bead, translation(60, 0, -2)));
  expect(figureOf(report, 'undercut.lower', 'bead-1') / ((Math.PI * 8) / 3)).toBeCloseTo(1, 1);
  expect(figureOf(report, 'undercut.depth-lower', 'bead-1')).toBeGreaterThan(1);
  expect(figureOf(report, 'undercut.upper', 'bead-1')).toBeCloseTo(0, 6);
});

// Archimedes, On the Sphere and Cylinder: a zone's area is 2 pi R times its height, so of a ball across its equator
// the area with draft from a to b is 4 pi R^2 (sin b - sin a); under 1 degree 4 pi R^2 sin 1.
test('draft.little of a ball parted at its equator is 4 pi R^2 sin 1 degree', async () => {
  const fine = single(ball(5, [0, 0, 0], 1440));
  const mold = withMaster({ ...emptyMold, process: 'rigid' }, 'bead', fine, translation(60, 0, 0));
  const report = await runCheck(draft, mold);
  const area = 4 * Math.PI * 25;
  expect(figureOf(report, 'draft.little', 'bead-1') / (area * Math.sin(Math.PI / 180))).toBeCloseTo(1, 1);
  const { x, y } = report.series[0];
  const at30 = x.values.indexOf(32.5);
  const zone = Math.sin((35 * Math.PI) / 180) - Math.sin(Math.PI / 6);
  expect(y.values[at30] / (area * zone)).toBeCloseTo(1, 1);
});
