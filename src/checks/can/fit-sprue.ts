import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import { degreesPerRad, radPerDegree } from '../../geometry/index.ts';
import { type Check, check, type Sprue, shaftRadius } from '../../mold/index.ts';

const figure = (name: FigureName, value: number, source: string): Figure =>
  makeFigure(name, { subject: 'sprue', value, source, estimated: false });

interface SprueInput extends Pick<Sprue, 'holeRadius' | 'draftRad' | 'grip'> {
  readonly upper: number;
  readonly inCan: boolean;
  /** Diameter of the hole in the lid, where the plan says it. */
  readonly lidHole?: number;
}

/**
 * The sprue form in the hole of the upper half: its draft, what is left of it at the outer face, the lid over it. Whether
 * anything is left the layout judges.
 */
export const fitSprue: Check = check<SprueInput>({
  id: 'fit-sprue',
  title: 'Sprue form in its hole',
  follows: false,
  processes: ['rubber', 'rigid', 'poured'],
  units: ({ sprue, disc, bench, process }) => {
    if (!sprue) return [];
    const { holeRadius, draftRad, grip } = sprue;
    const inCan = process === 'rubber' && bench.can !== undefined;
    const lidHole = bench.closing?.lid?.hole;
    const input = {
      holeRadius,
      draftRad,
      grip,
      upper: disc.upper,
      inCan,
      ...(lidHole !== undefined && { lidHole }),
    };
    return [{ subject: 'sprue', about: ['sprue'], input }];
  },
  run: (input) => {
    const { draftRad, grip, upper, inCan } = input;
    const top = 2 * shaftRadius(input, upper);
    const inLid = inCan && grip > 0 && top > 0;
    const figures = [
      figure('fit.sprueDraft', draftRad * degreesPerRad, 'angle between the wall of the shaft and the axis'),
      figure('fit.holeTop', top, 'radius at the parting plane less thickness times tan of the draft'),
    ];
    if (inLid)
      figures.push(
        figure('fit.lidHoleMost', 2 * input.holeRadius, 'the shaft at the parting plane, its widest'),
      );
    return { findings: [...judgeDraft(top, draftRad), ...(inLid ? judgeLidHole(input, top) : [])], figures };
  },
});

function judgeDraft(top: number, draftRad: number): Finding[] {
  if (top <= 0 || draftRad >= radPerDegree - 1e-9) return [];
  const values = { measured: draftRad * degreesPerRad, limit: radPerDegree * degreesPerRad };
  return [finding('fit.sprue-draft', { subject: 'sprue', values })];
}

/** The hole lets the sprue form through where it leaves the half, and not where it is widest: its taper is caught. */
function judgeLidHole({ grip, lidHole, holeRadius }: SprueInput, least: number): Finding[] {
  const subject = 'sprue';
  const most = 2 * holeRadius;
  if (lidHole === undefined)
    return [finding('fit.sprue-lid', { subject, values: { measured: grip, hole: least, most } })];
  if (lidHole >= least - 1e-9 && lidHole <= most + 1e-9) return [];
  const which = lidHole < least ? 'narrow' : 'wide';
  const values = { which, measured: lidHole, limit: which === 'narrow' ? least : most } as const;
  return [finding('fit.lid-hole', { subject, values })];
}
