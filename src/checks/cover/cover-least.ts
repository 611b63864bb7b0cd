import { type Figure, type FigureName, makeFigure } from '../../findings/index.ts';
import { type Check, check, coveredFixtures } from '../../mold/index.ts';
import { nextStock } from '../../tables/index.ts';
import { everyProcess } from '../from-mold/index.ts';
import { coverSource, type HalfThickness, halfThicknessOf, leastOf } from './half-thickness.ts';

interface LeastInput {
  readonly reaching: readonly { readonly id: string; readonly lowest: number; readonly highest: number }[];
  readonly halves: HalfThickness;
  readonly estimated: boolean;
}

/**
 * The least cover of the whole mold, and the thinnest half, and stock, that leaves the cover wanted everywhere; stock
 * is said of what drives it.
 */
export const leastCover: Check = check<LeastInput>({
  id: 'cover-least',
  title: 'Least cover',
  follows: false,
  processes: everyProcess,
  units: (mold) => {
    const masters = mold.placements.map(({ id, lowest, highest }) => ({ id, lowest, highest }));
    const fixtures = coveredFixtures(mold).map(({ id, depth, height }) => ({
      id,
      lowest: -depth,
      highest: height,
    }));
    const reaching = [...masters, ...fixtures];
    const estimated = mold.placements.some((one) => one.estimated);
    return reaching.length === 0
      ? []
      : [{ subject: 'mold', about: [], input: { reaching, halves: halfThicknessOf(mold), estimated } }];
  },
  run: ({ reaching, halves, estimated }) => {
    // Of several that reach equally far the first by name, so that the order of the plan does not matter.
    const named = [...reaching].sort((a, b) => (a.id < b.id ? -1 : 1));
    const below = named.reduce((far, one) => (one.lowest < far.lowest ? one : far));
    const above = named.reduce((far, one) => (one.highest > far.highest ? one : far));
    const needs = {
      lower: Math.max(0, -below.lowest) + leastOf(halves),
      upper: Math.max(0, above.highest) + leastOf(halves),
    };
    const figure = (name: FigureName, value: number, subject = 'mold'): Figure =>
      makeFigure(name, { subject, value, source: coverSource, estimated });
    const stock = (name: FigureName, needed: number, drivenBy: string): Figure[] => {
      const row = halves.process === 'rubber' ? nextStock(needed) : undefined;
      return row
        ? [{ ...figure(name, row.thickness, drivenBy), source: `${coverSource}; ${row.source.text}` }]
        : [];
    };
    return {
      figures: [
        figure('cover.least', Math.min(halves.lower + below.lowest, halves.upper - above.highest)),
        figure('cover.needs-lower', needs.lower),
        figure('cover.needs-upper', needs.upper),
        ...stock('cover.stock-lower', needs.lower, below.id),
        ...stock('cover.stock-upper', needs.upper, above.id),
      ],
    };
  },
});
