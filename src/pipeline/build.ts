import { checks } from '../checks/index.ts';
import { type Build, type CheckedSolid, exportSolid, sha256Hex, type Withheld } from '../export/index.ts';
import { type Finding, joinReport, type Report } from '../findings/index.ts';
import type { Kernel, Solid } from '../kernel/index.ts';
import type { Mold, Part } from '../mold/index.ts';
import { parts } from '../parts/index.ts';
import { type RunOptions, runWorks } from './run-work.ts';

/** The report on a mold: what was found while reading it, then what each check that applies finds. */
export function checkMold(
  mold: Mold,
  found: readonly Finding[],
  kernel: Kernel,
  options: RunOptions = {},
): Report {
  const { results, findings } = runWorks(checks, mold, { kernel }, options);
  return joinReport(mold.title, [{ findings: found }, ...results, { findings }]);
}

export interface BuildOptions extends RunOptions {
  /** Only solids whose id, or whose part's id, begins with one of these. */
  readonly only?: readonly string[];
}

/** A build, with the names among `only` that fit nothing. */
export interface BuildOutcome {
  readonly build: Build;
  readonly unmatched: readonly string[];
}

/**
 * Checks the mold, makes its solids, audits each, and withholds those that a stop concerns. A stop concerns a solid
 * when its subject is the solid, something the solid was made from, or the whole mold.
 */
export async function buildMold(
  mold: Mold,
  found: readonly Finding[],
  source: { readonly planBytes: Uint8Array; readonly version: string },
  kernel: Kernel,
  { only, ...options }: BuildOptions = {},
): Promise<BuildOutcome> {
  const report = checkMold(mold, found, kernel, options);
  const { solids, findings, unmatched } = makeSolids(mold, kernel, only, options);
  const checked: CheckedSolid[] = [];
  for (const [done, solid] of solids.entries()) {
    options.progress?.({ title: `audit of ${solid.title}`, done, total: solids.length });
    checked.push(await exportSolid(solid));
  }
  const all = [...report.findings, ...findings, ...checked.flatMap((one) => one.findings)];
  const sorted = withhold(checked, all);
  const build: Build = {
    mold,
    planHash: sha256Hex(source.planBytes),
    version: source.version,
    solids: sorted.released,
    withheld: sorted.withheld,
    report: { ...report, findings: all },
  };
  return { build, unmatched };
}

interface Made {
  readonly solids: readonly Solid[];
  readonly findings: readonly Finding[];
  readonly unmatched: readonly string[];
}

function makeSolids(
  mold: Mold,
  kernel: Kernel,
  only: readonly string[] | undefined,
  options: RunOptions,
): Made {
  if (!only) {
    const { results, findings } = runWorks(parts, mold, { kernel }, options);
    return { solids: results.flat(), findings, unmatched: [] };
  }
  const fits = (name: string) => only.filter((start) => name.startsWith(start));
  const kinds = new Set(parts.flatMap(({ id }) => fits(id)));
  // Only a name that is no part's can be a single solid's; then the other parts have to be run to find it.
  const single = only.filter((start) => !kinds.has(start));
  const met = new Set(kinds);
  const solids: Solid[] = [];
  const findings: Finding[] = [];
  for (const part of parts) {
    const whole = fits(part.id).length > 0;
    if (!whole && single.length === 0) continue;
    const run = runPart(part, mold, kernel, options);
    const kept = run.solids.filter(({ id }) => whole || fits(id).length > 0);
    for (const { id } of kept) for (const start of fits(id)) met.add(start);
    solids.push(...kept);
    if (kept.length > 0 || whole) findings.push(...run.findings);
  }
  return { solids, findings, unmatched: only.filter((start) => !met.has(start)) };
}

function runPart(part: Part, mold: Mold, kernel: Kernel, options: RunOptions) {
  const { results, findings } = runWorks([part], mold, { kernel }, options);
  return { solids: results.flat(), findings };
}

function withhold(checked: readonly CheckedSolid[], findings: readonly Finding[]) {
  const stops = findings.filter(({ severity }) => severity === 'stop');
  const released: CheckedSolid[] = [];
  const withheld: Withheld[] = [];
  for (const one of checked) {
    const { id, title, subjects } = one.solid;
    const reasons = stops.filter(
      ({ subject }) => subject === 'mold' || subject === id || subjects.includes(subject),
    );
    if (reasons.length === 0) released.push(one);
    else withheld.push({ id, title, subjects, reasons: [...new Set(reasons.map(({ says }) => says))] });
  }
  return { released, withheld };
}
