import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  type Judged,
  makeFigure,
} from '../findings/index.ts';
import type { Mold } from '../mold/index.ts';
import { holdingReserve } from '../tables/index.ts';

type Closing = NonNullable<Mold['bench']['closing']>;

/** What may hold the can against the cure; bolts draw it shut and are never counted. */
export interface Holding {
  readonly clamps?: NonNullable<Closing['clamps']>;
  readonly press?: NonNullable<Closing['press']>;
  readonly bolts?: object;
}

/**
 * What holds the can shut through the cure, against the force (N) that opens it. A press counts only while the can is
 * under it. Clamps round a can that stays in the press are not added to it: how they share the load nobody knows.
 */
export function holding({ clamps, press, bolts }: Holding, force: number): Judged {
  const stop = (found: Finding) => ({ findings: [found], figures: [] });
  const pressed = press?.cure === 'in the press' ? press : undefined;
  if (!pressed && !clamps) {
    if (press) return stop(press.cure === 'out' ? pressLeaves(force) : pressUnsaid(force));
    return bolts ? stop(boltsAlone(force)) : { findings: [], figures: [] };
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
    figures: [
      ...(clamps ? [figure('closing.clamps', clamps.count, 'the plan, or its rule for this disc')] : []),
      figure('closing.held', held, source),
    ],
  };
}

const figure = (name: FigureName, value: number, source: string): Figure =>
  makeFigure(name, { subject: 'closing', value, source, estimated: false });

const rated = (
  count: number,
  force: number | undefined,
): { readonly count: number; readonly held?: number } => ({
  count,
  ...(force !== undefined && { held: count * force }),
});

const boltsAlone = (force: number): Finding =>
  finding('closing.bolts-alone', {
    subject: 'closing',
    says: `Bolts alone hold the can against ${kN(force)}.`,
  });

const pressUnsaid = (force: number): Finding =>
  finding('closing.unrated', {
    subject: 'closing',
    says: `The plan does not say whether the can stays under the press, where ${kN(force)} push it open.`,
    remedy: 'Write `cure: in the press` or `cure: out` under `press`.',
  });

const pressLeaves = (force: number): Finding =>
  finding('closing.press-leaves', {
    subject: 'closing',
    says: `The can is taken out of the press for the cure, and no clamps hold it against ${kN(force)}.`,
  });

function unrated(
  { what, count }: { readonly what: 'press' | 'clamps'; readonly count: number },
  force: number,
): Finding {
  const who = what === 'press' ? 'The press is' : count === 1 ? 'A clamp is' : `${count} clamps are`;
  const says = `${who} to hold ${kN(force)}, and the plan does not say what ${what === 'press' || count === 1 ? 'it' : 'each'} is rated for.`;
  return finding('closing.unrated', { subject: 'closing', says });
}

const tooWeak = (what: 'press' | 'clamps', held: number, force: number): Finding =>
  finding(what === 'press' ? 'closing.press-short' : 'closing.clamps-short', {
    subject: 'closing',
    measured: { value: held, unit: 'N' },
    limit: { value: holdingReserve * force, unit: 'N' },
    says: `${what === 'press' ? 'The press holds' : 'The clamps hold'} ${kN(held)}; the can is pushed open with ${kN(force)}, and a quarter more is wanted: ${kN(holdingReserve * force)}.`,
  });

const kN = (newton: number): string => `${(newton / 1000).toFixed(1)} kN`;
