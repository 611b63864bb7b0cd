import type { OutsideCheck } from './outside-check.ts';

/** How cavities fill. */
export const fillChecks: readonly OutsideCheck[] = [
  {
    figures: ['fill.air', 'fill.airMost'],
    source: 'air over a rising face in the spin field, integrated over the face',
    kind: 'closed form',
    value: 'U tube and inverted cup within 10 and 6 % at 0.4 mm, 1.8 and 1.1 % at 0.1 mm; n tube 61.8 %',
    file: 'fill-levels.test.ts',
    test: 'of a U tube: 10, 3.6 and 1.8 % at 0.4, 0.2 and 0.1 mm',
  },
  {
    figures: ['fill.air', 'fill.airMost'],
    source: 'Boyle with the pressure at the moving face',
    kind: 'closed form',
    value: 'length of the column within 1 %',
    file: 'fill-formulas.test.ts',
    test: 'Boyle with a moving interface: the face stands where the pressure there balances the air',
  },
  {
    figures: ['fill.air', 'fill.airMost'],
    source: 'two-phase flow runs of legs under heavy metal (OpenFOAM 1912)',
    kind: 'common practice, no published source',
    value: 'locked or exchanging at 16 Bond numbers; one, the coarser of two runs, comes out otherwise',
    file: 'fill-plane-runs.test.ts',
    test: 'lock table: the forecast lies on the right side of each bracket but one',
  },
  {
    figures: ['fill.band'],
    source: 'a two-phase flow run of a bar under a gate of 2.1 mm (OpenFOAM 1912)',
    kind: 'common practice, no published source',
    value: '18 % of the bar in one place, 24 % in all',
    file: 'fill-bars.test.ts',
    test: 'under an inner gate too narrow for air a band stays, never none and never all',
  },
  {
    figures: ['fill.time', 'fill.cell'],
    source: 'a bar of 225 mm3 at 200 mm3/s; cells of 0.3 mm that make it up',
    kind: 'closed form',
    value: '1.125 s; 225 mm3 in cells',
    file: 'fill-formulas.test.ts',
    test: 'a bar of 225 mm3 fills in 1.125 s at 200 mm3/s, in cells of 0.3 mm',
  },
  {
    figures: ['fill.air', 'fill.airMost', 'fill.band'],
    source: 'two-phase flow runs in space of bars, cones, a leaf and a master of the demo (OpenFOAM 1912)',
    kind: 'common practice, no published source',
    value:
      'the same order of fillings and places of air; shares within a tenth of range and band, but for those in the README of the room',
    file: 'fill-runs.test.ts',
    test: 'share of air at the end of pouring, run by run',
  },
];
