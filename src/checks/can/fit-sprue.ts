import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import { degreesPerRad, radPerDegree } from '../../geometry/index.ts';
import { type Check, check, type Sprue, shaftRadius } from '../../mold/index.ts';

const figure = (name: FigureName, value: number, source: string): Figure =>
  makeFigure(name, { subject: 'sprue', value, source, estimated: false });

interface SprueInput extends Pick<Sprue, 'holeRadius' | 'draftRad' | 'grip'> {
  readonly upper: number;
  readonly inCan: boolean;
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
    const input = { holeRadius, draftRad, grip, upper: disc.upper, inCan };
    return [{ subject: 'sprue', about: ['sprue'], input }];
  },
  run: (input) => {
    const { draftRad, grip, upper, inCan } = input;
    const top = 2 * shaftRadius(input, upper);
    const figures = [
      figure('fit.sprueDraft', draftRad * degreesPerRad, 'angle between the wall of the shaft and the axis'),
      figure('fit.holeTop', top, 'radius at the parting plane less thickness times tan of the draft'),
    ];
    return { findings: judgeSprue(top, draftRad, inCan ? grip : 0), figures };
  },
});

function judgeSprue(top: number, draftRad: number, grip: number): Finding[] {
  const subject = 'sprue';
  const draft = draftRad * degreesPerRad;
  if (top <= 0) return [];
  const findings: Finding[] = [];
  if (draftRad < radPerDegree - 1e-9) {
    const values = { measured: draft, limit: radPerDegree * degreesPerRad };
    findings.push(finding('fit.sprue-draft', { subject, values }));
  }
  if (grip > 0) findings.push(finding('fit.sprue-lid', { subject, values: { measured: grip, hole: top } }));
  return findings;
}
