import { expect, it } from 'vitest';
import { superheat } from '../../src/checks/heat/superheat.ts';
import { plates } from '../../src/checks/turning/plates.ts';
import { translation } from '../../src/geometry/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { emptyMold, figureOf, runCheck, withMaster } from '../checks/small-mold.ts';
import { box, single } from '../revolved-solids.ts';

const brick = single(box([-5, -5, -5], [5, 5, 5]));
const mold = withMaster(emptyMold, 'brick', brick, translation(80, 0, 0));
const pour = (alloy: Mold['bench']['alloy']) =>
  runCheck(superheat, { ...mold, bench: { ...(alloy && { alloy }) } });

// Sn63Pb37 melts at 183 C, at once (a table of solder alloys); pewter of 91 tin, 7 antimony, 2 copper from 240 to 300 C.
it.each([
  [{ name: 'Sn63Pb37', pourC: 220 }, 37, []],
  [{ name: 'Sn63Pb37', pourC: 195 }, 12, ['heat.little-superheat']],
  [{ name: 'pewter 91-7-2', pourC: 285 }, -15, ['heat.pour-cold']],
  // What the plan says comes before the table.
  [{ name: 'pewter 91-7-2', liquidusC: 260, pourC: 285 }, 25, []],
])('superheat of %j is %d K', async (alloy, kelvin, codes) => {
  const report = await pour(alloy);
  expect(figureOf(report, 'heat.superheat', 'alloy')).toBeCloseTo(kelvin, 9);
  expect(report.findings.map(({ code }) => code)).toEqual(codes);
});

it('says where the liquidus is not known, and stops where not even the solidus is reached', async () => {
  const codesOf = async (alloy: Mold['bench']['alloy']) =>
    (await pour(alloy)).findings.map(({ code }) => code);
  expect(await codesOf({ name: 'house metal', pourC: 285 })).toEqual(['heat.not-checked']);
  expect(await codesOf({ solidusC: 290, pourC: 285 })).toEqual(['heat.not-checked', 'heat.pour-cold']);
  expect(await codesOf({ name: 'cold casting resin', pourC: 25 })).toEqual([]);
});

// Corners of the brick: 85 mm out and 5 to the side, but the circle round it reaches 80 + 7.071 mm.
it.each([
  [250, []],
  [180, ['spin.overhang']],
  [170, ['spin.plate-small']],
])('a plate of %d mm under a disc of 250', async (plateDiameter, codes) => {
  const report = await runCheck(plates, { ...mold, bench: { machine: { plateDiameter } } });
  expect(figureOf(report, 'spin.plate', 'machine')).toBeCloseTo(plateDiameter / 2 - 80 - Math.hypot(5, 5), 6);
  expect(report.findings.map(({ code }) => code)).toEqual(codes);
});
