import { type Figure, type FigureName, makeFigure, type ReportPart } from '../findings/index.ts';
import type { Vec3 } from '../kernel/index.ts';
import { type Check, coveredFixtures, type PartingSurface, work } from '../mold/index.ts';
import { nextStock } from '../tables/index.ts';
import { everyProcess, geometry, type Halves, halvesOf, leastOf, tooThin } from './cover.ts';

interface LeastInput {
  readonly reaching: readonly { readonly id: string; readonly lowest: number; readonly highest: number }[];
  readonly halves: Halves;
  readonly estimated: boolean;
}

/**
 * The least cover of the whole mold, and the thinnest half, and stock, that leaves the cover wanted everywhere; stock
 * is said of what drives it.
 */
export const leastCover: Check = work<LeastInput, ReportPart>({
  id: 'cover-least',
  title: 'Least cover',
  scope: 'whole',
  processes: everyProcess,
  jobs: (mold) => {
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
      : [{ subject: 'mold', input: { reaching, halves: halvesOf(mold), estimated } }];
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
      makeFigure(name, { subject, value, source: geometry, estimated });
    const stock = (name: FigureName, needed: number, drivenBy: string): Figure[] => {
      const row = halves.process === 'rubber' ? nextStock(needed) : undefined;
      return row
        ? [{ ...figure(name, row.thickness, drivenBy), source: `${geometry}; ${row.source.text}` }]
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

interface PartingInput {
  readonly surface: PartingSurface;
  readonly halves: Halves;
}

/** What each half is thick where the parting surface comes nearest to its outer face. */
export const coverOfParting: Check = work<PartingInput, ReportPart>({
  id: 'cover-parting',
  title: 'Thickness of the halves under the parting surface',
  scope: 'whole',
  processes: everyProcess,
  jobs: (mold) =>
    mold.parting.flat
      ? []
      : [{ subject: 'mold', input: { surface: sheetless(mold.parting), halves: halvesOf(mold) } }],
  run: ({ surface, halves }) => {
    const [low, high] = ends(surface);
    const sides = [
      { half: 'lower', left: halves.lower + low[2], place: low },
      { half: 'upper', left: halves.upper - high[2], place: high },
    ] as const;
    const source = 'extremes of the parting surface against the thickness of the half';
    return {
      figures: sides.map(({ half, left, place }) =>
        makeFigure(`cover.parting-${half}`, {
          subject: 'mold',
          value: left,
          source,
          estimated: false,
          places: [place],
        }),
      ),
      findings: sides.flatMap(({ half, left, place }) => {
        if (left >= leastOf(halves)) return [];
        return [
          tooThin(
            'parting',
            half,
            { subject: 'parting', place, cover: left, reach: halves[half] - left },
            halves,
          ),
        ];
      }),
    };
  },
});

/** The heights alone: the sheet is not looked at. */
const sheetless = (surface: PartingSurface): PartingSurface => ({
  ...surface,
  sheet: { positions: new Float32Array(), triangles: new Uint32Array() },
});

/** Lowest and highest node. */
function ends({ heights, nx, x0, y0, cell }: PartingSurface): [Vec3, Vec3] {
  let [low, high] = [0, 0];
  for (let k = 1; k < heights.length; k++) {
    if (heights[k] < heights[low]) low = k;
    if (heights[k] > heights[high]) high = k;
  }
  const at = (k: number): Vec3 => [x0 + (k % nx) * cell, y0 + Math.floor(k / nx) * cell, heights[k]];
  return [at(low), at(high)];
}
