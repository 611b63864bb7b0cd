import { expect, test } from 'vitest';
import { mmPerInch } from '../../src/geometry/index.ts';
import { insertPockets, tapDrill, thread } from '../../src/tables/index.ts';

// ISO 2306 tap drills (from memory), which round nominal diameter less pitch of ISO 261 to a drill of 0.1 mm.
test.each([
  ['M3', 2.5],
  ['M4', 3.3],
  ['M5', 4.2],
  ['M6', 5],
  ['M8', 6.8],
  ['M8x1', 7],
  ['M10', 8.5],
  ['M10x1.25', 8.8],
  ['M12', 10.2],
  ['M16', 14],
])('the tap drill of %s is %s mm to 0.06', (name, drill) => {
  const row = thread(name);
  expect(row && Math.abs(tapDrill(row) - drill)).toBeLessThan(0.06);
});

// Usual inch tap drills for 75 % thread (from memory): #7 .201, #3 .213, F .257, 5/16, Q .332, 27/64 in.
test.each([
  ['1/4-20 UNC', 0.201],
  ['1/4-28', 0.213],
  ['5/16', 0.257],
  ['3/8-16', 0.3125],
  ['3/8-24 UNF', 0.332],
  ['1/2', 27 / 64],
])('the tap drill of %s is %s in to 0.006', (name, drill) => {
  const row = thread(name);
  expect(row && Math.abs(tapDrill(row) / mmPerInch - drill)).toBeLessThan(0.006);
});

test('names are read as people write them; what is not in the table is not guessed', () => {
  expect(thread(' m6 ')?.name).toBe('M6');
  expect(thread('M8 x 1.25')?.name).toBe('M8');
  expect(thread('1/4')?.name).toBe('1/4-20');
  expect(thread('3/8"')?.name).toBe('3/8-16');
  for (const none of ['M7', 'M8x2', '1/4-19', '', 'M', '8']) expect(thread(none)).toBe(undefined);
});

test('an insert pocket holds its screw, and every one names a thread', () => {
  for (const { size, diameter, depth } of insertPockets) {
    const row = thread(size);
    expect(row && diameter > row.diameter && depth > row.diameter).toBe(true);
  }
});
