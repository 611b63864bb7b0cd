import { makeFigure } from '../../findings/index.ts';
import { type Check, check, masterOf } from '../../mold/index.ts';
import { halfDensity } from '../from-mold/index.ts';

interface LeftoverInput {
  readonly volume: number;
  readonly densityKgM3: number;
  readonly estimated: boolean;
}

/** What is cut away where masters lie, weighed: it goes on the ledger as stock. */
export const rubberLeftover: Check = check<LeftoverInput>({
  id: 'rubber-leftover',
  title: 'Rubber left over',
  follows: false,
  processes: ['rubber'],
  units: (mold) => {
    const density = halfDensity(mold);
    if (!density || mold.placements.length === 0) return [];
    const volumes = mold.placements.map((one) => masterOf(mold, one).measures.volume * one.scale ** 3);
    const input = {
      volume: volumes.reduce((sum, one) => sum + one, 0),
      densityKgM3: density.value,
      estimated: density.estimated || mold.placements.some(({ estimated }) => estimated),
    };
    return [{ subject: 'mold', about: [], input }];
  },
  run: ({ volume, densityKgM3, estimated }) => ({
    figures: [
      makeFigure('ledger.leftover', {
        subject: 'mold',
        value: volume * densityKgM3 * 1e-6,
        source: 'volumes of all placed masters times the density of the rubber',
        estimated,
      }),
    ],
  }),
});
