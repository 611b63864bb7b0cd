import { afterEach, describe, expect, it } from 'vitest';
import { coverOfFixtures } from '../../../src/checks/cover/cover-fixtures.ts';
import type { Boss, Mold, Process } from '../../../src/mold/index.ts';
import { coversOf, reaching } from '../../../src/preview/state/reaching.ts';
import { mold, report } from '../../../src/preview/state/store.ts';
import { emptyMold, nutAt, runCheck, smallSprue } from '../../checks/small-mold.ts';

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
const hexagon: Boss = { ...cone, id: 'hexagon', kind: 'hexagon', acrossFlats: 12, headDraftRad: 0.1 };
const withBosses = (process: Process): Mold => ({
  ...emptyMold,
  process,
  sprue: smallSprue,
  bosses: [nutAt('nut', 0, 60), cone, hexagon],
});

const barsOf = (now: Mold) => {
  mold.value = now;
  return new Map(reaching.value.map((one) => [one.id, one]));
};

afterEach(() => {
  mold.value = undefined;
  report.value = undefined;
});

describe('what stands into the halves, as the sheet on thickness draws it', () => {
  it.each(['rubber', 'rigid', 'poured'] as const)(
    'is what the cover of %s halves is counted to',
    async (process) => {
      const now = withBosses(process);
      const bars = barsOf(now);
      const { figures } = await runCheck(coverOfFixtures, now);
      expect(bars.size).toBe(4);
      for (const { id, lowest, highest } of bars.values()) {
        const cover = (half: string) =>
          figures.find(({ name, subject }) => name === `cover.${half}` && subject === id);
        expect(cover('lower')?.value).toBeCloseTo(now.disc.lower + lowest, 9);
        expect(cover('upper')?.value).toBeCloseTo(now.disc.upper - highest, 9);
      }
    },
  );

  it('has a cone of rigid halves without root, in a socket higher than its head', () => {
    const one = barsOf(withBosses('rigid')).get('cone');
    // c sqrt(r2 + h2) / r over the tip.
    expect(one?.lowest).toBeCloseTo(0, 12);
    expect(one?.highest).toBeCloseTo(7.2 + (0.25 * Math.hypot(6, 7.2)) / 6, 9);
  });

  it('is as wide as the corners of nuts and hexagons', () => {
    const bars = barsOf(withBosses('rubber'));
    expect(bars.get('nut')?.reach).toBeCloseTo(13 / Math.sqrt(3), 9);
    expect(bars.get('hexagon')?.reach).toBeCloseTo(12 / Math.sqrt(3), 9);
    expect(bars.get('cone')?.reach).toBe(6);
  });

  it('has covers only in the halves it reaches into', () => {
    const bars = barsOf(withBosses('poured'));
    report.value = undefined;
    const sprue = bars.get('sprue');
    expect(sprue && coversOf({ ...sprue, coverLower: 2, coverUpper: 3 })).toEqual([2]);
  });
});
