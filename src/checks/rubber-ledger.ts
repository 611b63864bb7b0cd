import { makeFigure, type ReportPart } from '../findings/index.ts';
import { type Check, work } from '../mold/index.ts';

interface LedgerInput {
  readonly id: string;
  readonly volume: number;
  readonly scale: number;
  readonly estimated: boolean;
}

/** Rubber that each master takes the place of: as much can be cut away where it lies. */
export const rubberLedger: Check = work<LedgerInput, ReportPart>({
  id: 'rubber-ledger',
  title: 'Rubber displaced',
  scope: 'placement',
  processes: ['rubber'],
  jobs: ({ placements, masters }) =>
    placements.map(({ id, master, scale, estimated }) => {
      const volume = masters.find((one) => one.id === master)?.measures.volume;
      if (volume === undefined) throw new Error(`no master ${master}`);
      return { subject: id, input: { id, volume, scale, estimated } };
    }),
  run: ({ id, volume, scale, estimated }) => ({
    figures: [
      makeFigure('ledger.displaced', {
        subject: id,
        value: volume * scale ** 3,
        source: 'volume of the placed mesh',
        estimated,
      }),
    ],
  }),
});
