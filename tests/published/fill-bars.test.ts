import { describe, expect, it } from 'vitest';
import { emptyRoom } from '../../src/fill/empty-room.ts';
import { forecastRoom } from '../../src/fill/forecast.ts';
import { type Box, cut, portIn, roomOf, turning } from '../fill/shapes.ts';
import { shutIn } from '../fill/shut-in.ts';
import { barRuns } from './fill/runs.ts';

describe('a bar 25 mm long and 3 mm square along the radius', () => {
  const bar: Box = [
    [60, -1.5, -1.5],
    [85, 1.5, 1.5],
  ];
  const share = (at: Box, vent?: Box): number => {
    const cells = cut(roomOf([bar]), 0.3);
    const vents = vent ? [portIn(cells, 'vent', vent)] : [];
    return shutIn(cells, [portIn(cells, 'gate', at, 0, 1.8), ...vents]) / 225;
  };
  const gates = {
    outer: [
      [84.6, -9, -9],
      [86, 9, 9],
    ],
    side: [
      [71.6, 1.2, -9],
      [73.4, 9, 9],
    ],
    inner: [
      [59, -1, -1],
      [60.5, 1, 1],
    ],
  } as const satisfies Record<string, Box>;

  it('a bar: outer over side over inner, 99, 45 and 0 % before it is pressed together', () => {
    const [outer, side, inner] = [share(gates.outer), share(gates.side), share(gates.inner)];
    console.log(`bar: ${[outer, side, inner].map((one) => (100 * one).toFixed(1)).join(', ')} %`);
    expect(outer).toBeGreaterThan(0.97);
    expect(side).toBeGreaterThan(0.42);
    expect(side).toBeLessThan(0.48);
    expect(inner).toBe(0);
    const [far, middle, near] = barRuns.map((one) => one.share);
    expect([far > middle, middle > near]).toEqual([true, true]);
  });

  it('a bar gated at its outer end keeps more than 95 % with a vent at its outer end', () => {
    const wrong = share(gates.outer, gates.outer);
    const right = share(gates.outer, [
      [59, -9, -9],
      [60.5, 9, 9],
    ]);
    const percents = [wrong, right].map((one) => (100 * one).toFixed(1));
    console.log(`gated outside, vented outside ${percents[0]} %, inside ${percents[1]} %`);
    expect(wrong).toBeGreaterThan(0.95);
    expect(right).toBe(0);
  });

  it('under an inner gate too narrow for air a band stays, never none and never all', () => {
    const cells = cut(roomOf([bar]), 0.3);
    const gate = portIn(cells, 'gate', gates.inner, 0, 2.1);
    const [narrow] = forecastRoom(emptyRoom(cells, turning), [gate]).gates;
    expect(narrow.opening).toBeLessThan(1);
    expect(narrow.band[0]).toBeGreaterThan(0);
    // The run from a well: 18 % in one place under the gate, and 6 % mixed with the metal.
    expect(narrow.band[0] / 225).toBeLessThan(0.18);
    expect(narrow.band[1] / 225).toBeGreaterThan(0.16);
    expect(narrow.band[1] / 225).toBeLessThan(0.24);
    const [wide] = forecastRoom(emptyRoom(cells, turning), [{ ...gate, width: 4, depth: 2 }]).gates;
    expect([wide.opening > 1, wide.band]).toEqual([true, [0, 0]]);
  });
});
