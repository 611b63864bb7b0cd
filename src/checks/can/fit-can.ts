import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';
import { leftOut } from '../from-mold/index.ts';

/** How much wider than the disc a can may be, mm; 1 to 2 is usual (from memory), with 1 mm to spare. */
const canPlay = { least: 1, most: 3 };
/** How far the halves may stand over or stay under the depth of the can, mm. Our own choice. */
const depthPlay = { over: 2, under: 0.5 };

const figure = (name: FigureName, value: number, source: string): Figure =>
  makeFigure(name, { subject: 'can', value, source, estimated: false });

interface CanInput {
  readonly disc: { readonly diameter: number; readonly thickness: number };
  readonly can: { readonly diameter?: number; readonly depth?: number; readonly spacer?: number };
}

/** Disc in can: diameter and depth. */
export const fitCan: Check = check<CanInput>({
  id: 'fit-can',
  title: 'Disc in the can',
  follows: false,
  processes: ['rubber'],
  units: ({ disc, bench, placements }) => {
    // A plan of a sprue form alone has nothing to cure.
    if (placements.length === 0 && !bench.can) return [];
    const { diameter, depth, spacer } = bench.can ?? {};
    const can = {
      ...(diameter !== undefined && { diameter }),
      ...(depth !== undefined && { depth }),
      ...(spacer !== undefined && { spacer }),
    };
    const whole = { diameter: 2 * disc.radius, thickness: disc.lower + disc.upper };
    return [{ subject: 'can', about: [], input: { disc: whole, can } }];
  },
  run: ({ disc, can }) => {
    const findings: Finding[] = [];
    const figures: Figure[] = [];
    const missing = leftOut([
      ['can.diameter', can.diameter],
      ['can.depth', can.depth],
    ]);
    if (missing.length > 0)
      findings.push(finding('fit.not-checked', { subject: 'can', values: { which: 'can', missing } }));
    if (can.diameter !== undefined) {
      const gap = can.diameter - disc.diameter;
      figures.push(figure('fit.canGap', gap, 'diameter of the can less that of the disc'));
      findings.push(...judgeGap(gap));
    }
    if (can.depth !== undefined) {
      const left = can.depth - (can.spacer ?? 0) - disc.thickness;
      figures.push(figure('fit.depthLeft', left, 'depth of the can less spacers and both halves'));
      findings.push(...judgeDepth(left));
    }
    return { findings, figures };
  },
});

function judgeGap(gap: number): Finding[] {
  const subject = 'can';
  const { least, most } = canPlay;
  if (gap < 0)
    return [finding('fit.can-narrow', { subject, values: { measured: gap, limit: 0, beyond: -gap } })];
  if (gap < least) return [finding('fit.can-tight', { subject, values: { measured: gap, limit: least } })];
  if (gap > most) return [finding('fit.can-wide', { subject, values: { measured: gap, limit: most } })];
  return [];
}

function judgeDepth(left: number): Finding[] {
  const subject = 'can';
  const { over, under } = depthPlay;
  if (left < -over)
    return [finding('fit.can-shallow', { subject, values: { measured: left, limit: -over, beyond: -left } })];
  if (left > under) return [finding('fit.can-deep', { subject, values: { measured: left, limit: under } })];
  return [];
}
