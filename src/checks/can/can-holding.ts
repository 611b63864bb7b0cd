import { type Finding, finding, type Judged } from '../../findings/index.ts';
import type { Mold } from '../../mold/index.ts';
import { holdingReserve, threadDiameter } from '../../tables/index.ts';
import { byPlan, closingFigure } from './can-figure.ts';
import { tightening } from './can-tightening.ts';

type Closing = NonNullable<Mold['bench']['closing']>;

/** What may hold the can against the cure; bolts draw it shut and are never counted. */
export interface Holding {
  readonly clamps?: NonNullable<Closing['clamps']>;
  readonly press?: NonNullable<Closing['press']>;
  readonly bolts?: object;
}

/** Whether clamps carry the cure, and not a press the can stays under. */
export const clampsHold = ({ clamps, press }: Holding): boolean =>
  clamps !== undefined && press?.cure !== 'in the press';

/**
 * What holds the can shut through the cure, against the force (N) that opens it. A press counts only while the can is
 * under it. Clamps round a can that stays in the press are not added to it: how they share the load nobody knows.
 */
export function holding({ clamps, press, bolts }: Holding, force: number): Judged {
  const subject = 'closing';
  const stop = (found: Finding) => ({ findings: [found], figures: [] });
  const pressed = press?.cure === 'in the press' ? press : undefined;
  if (!pressed && !clamps) {
    if (press?.cure === 'out') return stop(finding('closing.press-leaves', { subject, values: { force } }));
    if (press) return stop(finding('closing.unrated', { subject, values: { which: 'stays', force } }));
    return bolts
      ? stop(finding('closing.bolts-alone', { subject, values: { force } }))
      : { findings: [], figures: [] };
  }
  const holders = [
    ...(pressed ? [{ what: 'press' as const, ...rated(1, pressed.force) }] : []),
    ...(clamps ? [{ what: 'clamps' as const, ...rated(clamps.count, clamps.force) }] : []),
  ];
  const known = holders.filter((one) => one.held !== undefined);
  if (known.length === 0) return stop(unrated(holders[0], force));
  const best = known.reduce((most, one) => ((one.held ?? 0) > (most.held ?? 0) ? one : most));
  const held = best.held ?? 0;
  const source =
    best.what === 'press' ? 'rated force of the press' : 'number of clamps times the rated force of each';
  return {
    findings: held >= holdingReserve * force ? [] : [tooWeak(best.what, held, force)],
    figures: [...(clamps ? tightened(clamps, force) : []), closingFigure('closing.held', held, source)],
  };
}

/** A rating says what a clamp may bear; it holds no more than it is tightened to. */
function tightened({ count, screw }: NonNullable<Holding['clamps']>, force: number) {
  const each = (holdingReserve * force) / count;
  const diameter = screw === undefined ? undefined : threadDiameter(screw);
  const source = 'the force that opens the can, with a quarter to spare, over all clamps';
  return [closingFigure('closing.clamps', count, byPlan), ...tightening('clamp', each, diameter, source)];
}

const rated = (
  count: number,
  force: number | undefined,
): { readonly count: number; readonly held?: number } => ({
  count,
  ...(force !== undefined && { held: count * force }),
});

const unrated = (
  { what: which, count }: { readonly what: 'press' | 'clamps'; readonly count: number },
  force: number,
): Finding => finding('closing.unrated', { subject: 'closing', values: { which, force, count } });

const tooWeak = (what: 'press' | 'clamps', held: number, force: number): Finding =>
  finding(what === 'press' ? 'closing.press-short' : 'closing.clamps-short', {
    subject: 'closing',
    values: { measured: held, limit: holdingReserve * force, force },
  });
