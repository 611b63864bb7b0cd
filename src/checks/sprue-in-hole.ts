import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  makeFigure,
  type ReportPart,
} from '../findings/index.ts';
import { type Check, type Sprue, shaftRadius, work } from '../mold/index.ts';

/** A form of rubber-molding practice leaves with 1 degree at least; common practice, no published source. */
const leastDraftRad = Math.PI / 180;

const degrees = 180 / Math.PI;

const figure = (name: FigureName, value: number, source: string): Figure =>
  makeFigure(name, { subject: 'sprue', value, source, estimated: false });

interface SprueInput extends Pick<Sprue, 'holeRadius' | 'draftRad' | 'grip'> {
  readonly upper: number;
  readonly inCan: boolean;
}

/** The sprue form in the hole of the upper half: its draft, what is left of it at the outer face, the lid over it. */
export const sprueInHole: Check = work<SprueInput, ReportPart>({
  id: 'fit-sprue',
  title: 'Sprue form in its hole',
  scope: 'whole',
  processes: ['rubber', 'rigid', 'poured'],
  jobs: ({ sprue, disc, bench, process }) => {
    if (!sprue) return [];
    const { holeRadius, draftRad, grip } = sprue;
    const inCan = process === 'rubber' && bench.can !== undefined;
    return [{ subject: 'sprue', input: { holeRadius, draftRad, grip, upper: disc.upper, inCan } }];
  },
  run: (input) => {
    const { draftRad, grip, upper, inCan } = input;
    const top = 2 * shaftRadius(input, upper);
    const figures = [
      figure('fit.sprueDraft', draftRad * degrees, 'angle between the wall of the shaft and the axis'),
      figure('fit.holeTop', top, 'radius at the parting plane less thickness times tan of the draft'),
    ];
    return { findings: judgeSprue(top, draftRad, inCan ? grip : 0), figures };
  },
});

function judgeSprue(top: number, draftRad: number, grip: number): Finding[] {
  const subject = 'sprue';
  const closed = finding('fit.sprue-closed', {
    subject,
    measured: { value: top, unit: 'mm' },
    limit: { value: 0, unit: 'mm' },
    says: `With ${(draftRad * degrees).toFixed(1)} degrees of draft nothing of the pouring hole is left at the outer face.`,
  });
  if (top <= 0) return [closed];
  const findings: Finding[] = [];
  if (draftRad < leastDraftRad - 1e-9)
    findings.push(
      finding('fit.sprue-draft', {
        subject,
        measured: { value: draftRad * degrees, unit: 'deg' },
        limit: { value: leastDraftRad * degrees, unit: 'deg' },
        says: `The sprue form has ${(draftRad * degrees).toFixed(2)} degrees of draft, where 1 degree is wanted.`,
      }),
    );
  if (grip > 0) {
    const says = `The sprue form stands ${mm(grip)} out of the upper half: the lid needs a hole of at least ${mm(top)}.`;
    findings.push(finding('fit.sprue-lid', { subject, measured: { value: grip, unit: 'mm' }, says }));
  }
  return findings;
}

const mm = (value: number): string => `${value.toFixed(2)} mm`;
