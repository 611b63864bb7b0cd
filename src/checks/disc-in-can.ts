import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  makeFigure,
  type ReportPart,
} from '../findings/index.ts';
import { type Check, work } from '../mold/index.ts';
import { leftOut, notChecked } from './not-given.ts';

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
export const discInCan: Check = work<CanInput, ReportPart>({
  id: 'fit-can',
  title: 'Disc in the can',
  scope: 'whole',
  processes: ['rubber'],
  jobs: ({ disc, bench, placements }) => {
    // A plan of a sprue form alone has nothing to cure.
    if (placements.length === 0 && !bench.can) return [];
    const { diameter, depth, spacer } = bench.can ?? {};
    const can = {
      ...(diameter !== undefined && { diameter }),
      ...(depth !== undefined && { depth }),
      ...(spacer !== undefined && { spacer }),
    };
    const whole = { diameter: 2 * disc.radius, thickness: disc.lower + disc.upper };
    return [{ subject: 'can', input: { disc: whole, can } }];
  },
  run: ({ disc, can }) => {
    const findings: Finding[] = [];
    const figures: Figure[] = [];
    const missing = leftOut([
      ['can.diameter', can.diameter],
      ['can.depth', can.depth],
    ]);
    if (missing.length > 0)
      findings.push(notChecked('fit.not-checked', 'can', 'The fit of the disc in the can is', missing));
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
  const say = (
    code: 'fit.can-narrow' | 'fit.can-tight' | 'fit.can-wide',
    limit: number,
    says: string,
  ): Finding[] => [
    finding(code, {
      subject: 'can',
      measured: { value: gap, unit: 'mm' },
      limit: { value: limit, unit: 'mm' },
      says,
    }),
  ];
  if (gap < 0) return say('fit.can-narrow', 0, `The disc is ${mm(-gap)} wider than the can.`);
  if (gap < canPlay.least)
    return say(
      'fit.can-tight',
      canPlay.least,
      `The can is ${mm(gap)} wider than the disc; ${mm(canPlay.least)} is wanted.`,
    );
  if (gap > canPlay.most)
    return say(
      'fit.can-wide',
      canPlay.most,
      `The can is ${mm(gap)} wider than the disc; at most ${mm(canPlay.most)} is wanted.`,
    );
  return [];
}

function judgeDepth(left: number): Finding[] {
  const say = (code: 'fit.can-shallow' | 'fit.can-deep', limit: number, says: string): Finding[] => [
    finding(code, {
      subject: 'can',
      measured: { value: left, unit: 'mm' },
      limit: { value: limit, unit: 'mm' },
      says,
    }),
  ];
  if (left < -depthPlay.over)
    return say(
      'fit.can-shallow',
      -depthPlay.over,
      `Both halves stand ${mm(-left)} over the depth of the can.`,
    );
  if (left > depthPlay.under)
    return say(
      'fit.can-deep',
      depthPlay.under,
      `Both halves leave ${mm(left)} of the depth of the can empty.`,
    );
  return [];
}

const mm = (value: number): string => `${value.toFixed(2)} mm`;
