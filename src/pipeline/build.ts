import { checks, fieldChecks } from '../checks/index.ts';
import { type Build, type CheckedSolid, exportSolid, sha256Hex, type Withheld } from '../export/index.ts';
import { filling, ventDrain } from '../fill/index.ts';
import { type Field, type Finding, joinReport, type Report, type UnitSystem } from '../findings/index.ts';
import type { Kernel } from '../kernel/index.ts';
import type { Drawing, Mold } from '../mold/index.ts';
import { applySeverity } from './apply-severity.ts';
import { inPlan } from './in-plan.ts';
import { ofMaster } from './of-master.ts';
import { drain, type RunOptions, stepTasks } from './run-task.ts';
import { concerns } from './withhold.ts';

export interface CheckOptions extends RunOptions {
  /** Whether to find fields too, such as the thickness of the walls: a number for each vertex of each placement. */
  readonly fields?: boolean;
}

/** The report on a mold: what was found while reading it, then what each check that applies finds. */
export function checkMold(
  mold: Mold,
  found: readonly Finding[],
  kernel: Kernel,
  options: CheckOptions = {},
): Report {
  return drain(stepChecks(mold, found, kernel, options));
}

/** As `checkMold`, with a stop before each job at which it may be left off. */
export function* stepChecks(
  mold: Mold,
  found: readonly Finding[],
  kernel: Kernel,
  { fields, ...options }: CheckOptions = {},
): Generator<void, Report> {
  const tasks = [...checks, filling, ventDrain, ...(fields ? fieldChecks : [])];
  const { done, failures } = yield* stepTasks(tasks, mold, { kernel }, options);
  const findings = failures.map((failure) => failure.finding);
  const report = joinReport(mold.title, mold.units, [
    { findings: found },
    ...done.map(({ output }) => output),
    { findings },
  ]);
  return { ...report, findings: applySeverity(inPlan(report.findings, mold), mold) };
}

/** The fields of a mold alone, such as the thickness of its walls; may be left off before each job. */
export function* stepFields(mold: Mold, kernel: Kernel, options: RunOptions = {}): Generator<void, Field[]> {
  const { done } = yield* stepTasks(fieldChecks, mold, { kernel }, options);
  return done.flatMap(({ output }) => output.fields ?? []);
}

/** The report where no mold came of the plan: what was found while reading it. */
export const unreadReport = (found: readonly Finding[], units: UnitSystem): Report =>
  joinReport('', units, [{ findings: found }]);

/** Solids of the mold without checks or audit, to be looked at, not handed out. `only` as in a build. */
export async function sketchSolids(mold: Mold, kernel: Kernel, { only, ...options }: BuildOptions = {}) {
  const { makeSolids } = await import('./make-solids.ts');
  return makeSolids(mold, kernel, only, options).solids;
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
 * Checks the mold, makes its solids, audits each, and withholds those that a stop concerns (see `concerns`). What
 * could not be made is named among the withheld.
 */
export async function buildMold(
  mold: Mold,
  found: readonly Finding[],
  source: { readonly planBytes: Uint8Array; readonly version: string },
  kernel: Kernel,
  { only, ...options }: BuildOptions = {},
): Promise<BuildOutcome> {
  const report = checkMold(mold, found, kernel, options);
  // Loaded here: the parts bring all of JSCAD, which a mere check need not wait for.
  const { makeSolids } = await import('./make-solids.ts');
  const stops = report.findings.filter(isStop);
  const made = makeSolids(mold, kernel, only, { ...options, stops });
  const { solids, drawings, failed, unmatched } = made;
  const checked: CheckedSolid[] = [];
  for (const [done, solid] of solids.entries()) {
    options.progress?.({ title: `audit of ${solid.title}`, done, total: solids.length });
    checked.push(await exportSolid(solid));
  }
  const concerning = concerns([...solids, ...drawings], mold);
  // What comes of a disc or form that cannot be made is withheld whatever it is like.
  const judged = checked.filter(({ solid }) => !stops.some((stop) => concerning(stop, solid)));
  const later = [
    ...made.findings,
    ...judged.flatMap((one) => one.findings.map((found) => ofMaster(found, mold))),
  ];
  const all = [...report.findings, ...applySeverity(inPlan(later, mold), mold)];
  const sorted = withhold({ checked, drawings }, all, mold);
  const build: Build = {
    mold,
    planHash: await sha256Hex(source.planBytes),
    version: source.version,
    solids: sorted.solids,
    drawings: sorted.drawings,
    withheld: [...sorted.withheld, ...failed],
    report: { ...report, findings: all },
  };
  return { build, unmatched };
}

const isStop = ({ severity }: Finding): boolean => severity === 'stop';

interface Things {
  readonly checked: readonly CheckedSolid[];
  readonly drawings: readonly Drawing[];
}

function withhold({ checked, drawings }: Things, findings: readonly Finding[], mold: Mold) {
  const stops = findings.filter(isStop);
  const concerning = concerns([...checked.map(({ solid }) => solid), ...drawings], mold);
  const withheld = new Map<string, Withheld>();
  const isFree = ({ id, title, subjects }: Omit<Withheld, 'reasons'>): boolean => {
    const reasons = stops.filter((stop) => concerning(stop, { id, subjects }));
    // A thing made both as a solid and as a drawing is named once.
    if (reasons.length > 0 && !withheld.has(id)) withheld.set(id, { id, title, subjects, reasons });
    return reasons.length === 0;
  };
  const solids = checked.filter(({ solid }) => isFree(solid));
  return { solids, drawings: drawings.filter(isFree), withheld: [...withheld.values()] };
}
