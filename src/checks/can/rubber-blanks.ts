import { type Figure, type FigureName, makeFigure } from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';
import { halfDensity } from '../from-mold/index.ts';

interface BlankInput {
  readonly half: string;
  /** mm. */
  readonly radius: number;
  readonly thickness: number;
  readonly density?: { readonly value: number; readonly estimated: boolean };
}

/** Rubber of each half as it is cut from stock, before well, hole and pockets are cut into it. */
export const rubberBlanks: Check = check<BlankInput>({
  id: 'rubber-blanks',
  title: 'Rubber of each half',
  follows: false,
  processes: ['rubber'],
  units: (mold) => {
    // A plan of fixtures alone cuts no rubber.
    if (mold.placements.length === 0) return [];
    const { radius, lower, upper } = mold.disc;
    const density = halfDensity(mold);
    return Object.entries({ 'lower half': lower, 'upper half': upper }).map(([half, thickness]) => ({
      subject: half,
      about: [],
      input: { half, radius, thickness, ...(density && { density }) },
    }));
  },
  run: ({ half, radius, thickness, density }) => {
    const volume = Math.PI * radius ** 2 * thickness;
    const figure = (name: FigureName, value: number, source: string, estimated: boolean): Figure =>
      makeFigure(name, { subject: half, value, source, estimated });
    return {
      figures: [
        figure('ledger.blank', volume, 'disc of the diameter and thickness of the half', false),
        ...(density
          ? [
              figure(
                'ledger.blankMass',
                volume * density.value * 1e-9,
                'its volume by the density of the rubber',
                density.estimated,
              ),
            ]
          : []),
      ],
    };
  },
});
