import { type FigureName, makeFigure } from '../../findings/index.ts';
import {
  type BuildUpSpace,
  buildUpSpaces,
  buildUpVolume,
  type Check,
  check,
  masterOf,
} from '../../mold/index.ts';

interface LedgerInput {
  readonly id: string;
  readonly volume: number;
  readonly scale: number;
  readonly estimated: boolean;
  readonly buildUp: BuildUpSpace | null;
}

/**
 * Rubber that each master takes the place of (as much can be cut away where it lies), and what each build-up fills:
 * as much has to be laid in there, as a fixture or as rubber cut to its outline.
 */
export const rubberLedger: Check = check<LedgerInput>({
  id: 'rubber-ledger',
  title: 'Rubber displaced and needed',
  follows: false,
  processes: ['rubber'],
  units: (mold) => {
    const spaces = buildUpSpaces(mold);
    return mold.placements.map(({ id, master, scale, estimated }) => {
      const volume = masterOf(mold, { id, master }).measures.volume;
      const buildUp = spaces.find((space) => space.id === id) ?? null;
      return { subject: id, about: [id], input: { id, volume, scale, estimated, buildUp } };
    });
  },
  run: ({ id, volume, scale, estimated, buildUp }, { memoize }) => {
    const figure = (name: FigureName, value: number, source: string) =>
      makeFigure(name, { subject: id, value, source, estimated });
    const needed = buildUp ? buildUpVolume(buildUp, memoize) : 0;
    return {
      figures: [
        figure('ledger.displaced', volume * scale ** 3, 'volume of the placed mesh'),
        ...(needed > 0
          ? [
              figure(
                'ledger.buildUp',
                needed,
                'space between parting plane, parting surface and master, in columns',
              ),
            ]
          : []),
      ],
    };
  },
});
