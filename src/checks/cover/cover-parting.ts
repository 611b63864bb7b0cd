import { makeFigure } from '../../findings/index.ts';
import type { Vec3 } from '../../geometry/index.ts';
import { type Check, check, type PartingSurface } from '../../mold/index.ts';
import { everyProcess } from '../from-mold/index.ts';
import { type HalfThickness, halfThicknessOf, leastOf, tooThin } from './half-thickness.ts';

interface PartingInput {
  readonly surface: PartingSurface;
  readonly halves: HalfThickness;
}

/** What each half is thick where the parting surface comes nearest to its outer face. */
export const coverOfParting: Check = check<PartingInput>({
  id: 'cover-parting',
  title: 'Thickness of the halves under the parting surface',
  follows: false,
  processes: everyProcess,
  units: (mold) =>
    mold.parting.flat
      ? []
      : [
          {
            subject: 'mold',
            about: [],
            input: { surface: sheetless(mold.parting), halves: halfThicknessOf(mold) },
          },
        ],
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
