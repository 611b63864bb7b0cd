import type { Finding, UnitSystem } from '../../src/findings/index.ts';
import type { Change, Share, Told, TrialLog, TrialSummary } from '../../src/trials/index.ts';
import { runs, showQuantity } from '../../src/wording/index.ts';
import { showFindings } from '../show-findings.ts';
import { strong, table, wrap } from '../terminal.ts';

export interface Trials {
  readonly title: string;
  readonly log: TrialLog;
  readonly summary: TrialSummary;
  /** About the log itself. */
  readonly findings: readonly Finding[];
}

/** Most proposals and cavities shown; --json has all. */
const mostShown = 5;

/** One page: what came of the pours, by pour, master and cavity, how often the forecast was right, and what to change next. */
export function showTrials(
  { title, log, summary, findings }: Trials,
  units: UnitSystem,
  width: number,
): string {
  const { pours, good, byMaster, advice } = summary;
  const head = `${title}: ${pours.length} ${pours.length === 1 ? 'pour' : 'pours'}, ${good.of} castings looked at, ${shareText(good)} good`;
  const tries = advice.tries.slice(0, mostShown);
  const next = [
    tries.length > 0
      ? `Change one thing, the first of these before the others:\n${showFindings(tries, units, width)}`
      : 'Nothing is proposed: no fault is noted that a rule knows.',
    ...(advice.heldBack.length > 0 ? [showFindings(advice.heldBack, units, width)] : []),
  ];
  return [
    strong(head),
    ...(log.about === undefined ? [] : [wrap(log.about, width)]),
    pourTable(summary, units),
    yieldTable('master', byMaster),
    worstCavities(summary),
    forecastText(summary, width),
    ...next,
    showFindings(findings, units, width),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

/** As a share with the range it lies in: `78 % (71 to 84 %)`. */
const shareText = ({ share, low, high, of }: Share): string =>
  of === 0 ? 'none' : `${percent(share)} % (${percent(low)} to ${percent(high)} %)`;

const percent = (share: number): string => (100 * share).toFixed(0);

function pourTable({ pours }: TrialSummary, units: UnitSystem): string {
  const shown = (value: number | undefined, unit: 'C' | 'rpm' | 'kg'): string =>
    value === undefined
      ? ''
      : unit === 'kg'
        ? showQuantity(1000 * value, 'g', units)
        : showQuantity(value, unit, units);
  const rows = pours.map(({ pour, changes, good }) => [
    String(pour.pour),
    pour.date ?? '',
    shown(pour.metalC, 'C'),
    shown(pour.moldC, 'C'),
    shown(pour.speedRpm, 'rpm'),
    shown(pour.shotKg, 'kg'),
    good.of === 0 ? '' : `${Math.round(good.share * good.of)} of ${good.of}`,
    pour.changed ?? changes.map(changeText).join('; '),
  ]);
  return table([['pour', 'date', 'metal', 'mold', 'speed', 'shot', 'good', 'changed'], ...rows], [0]);
}

const changeText = ({ kind, of }: Change): string => (of ? `${kind}: ${runs(of)}` : kind);

function yieldTable(name: string, lots: ReadonlyMap<string, Share>): string {
  if (lots.size === 0) return '';
  const rows = [...lots].map(([lot, share]) => [lot, String(share.of), shareText(share)]);
  return table([[name, 'castings', 'good'], ...rows], [1]);
}

function worstCavities({ byCavity }: TrialSummary): string {
  const bad = [...byCavity].filter(([, { share }]) => share < 1).sort(([, a], [, b]) => a.high - b.high);
  return yieldTable('worst cavities', new Map(bad.slice(0, mostShown)));
}

const toldText: Readonly<Record<Told, string>> = {
  all: 'air stays whatever is assumed',
  some: 'air may stay',
  none: 'it fills',
};

function forecastText({ hits, bonds }: TrialSummary, width: number): string {
  const rows = (hits ?? [])
    .filter(({ failed }) => failed.of > 0)
    .map(({ told, failed }) => [toldText[told], String(failed.of), shareText(failed)]);
  const lines =
    rows.length === 0 ? [] : [table([['the forecast said', 'castings', 'short or porous'], ...rows], [1])];
  if (bonds)
    lines.push(
      wrap(
        `Bond number of narrow places by these ${bonds.castings} castings: ${bonds.low.toFixed(1)} to ${bonds.high.toFixed(1)}, likeliest ${bonds.likeliest.toFixed(1)}. Only shown: the forecast keeps its own range.`,
        width,
      ),
    );
  return lines.join('\n\n');
}
