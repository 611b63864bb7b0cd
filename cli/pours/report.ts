import { toldAir } from '../../src/fill/index.ts';
import type { Finding } from '../../src/findings/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { type PlanSource, readMold } from '../../src/pipeline/index.ts';
import type { Plan } from '../../src/plan/index.ts';
import { type Cavity, summarize, takeInPlan } from '../../src/trials/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { type CacheOption, runCache } from '../cache/kept-results.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { savePlan } from '../plan-files.ts';
import { withProgress } from '../progress-line.ts';
import { showFindings } from '../show-findings.ts';
import type { Terminal } from '../terminal.ts';
import type { LogFile } from './log-file.ts';
import { showTrials } from './show-trials.ts';

interface ReportOptions extends CacheOption {
  readonly json?: true;
  readonly quiet?: true;
  readonly take?: string;
}

/** Prints what all pours of a log came to, and what to change next. */
export async function runPourReport(
  source: PlanSource,
  file: LogFile,
  options: ReportOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const { log, findings } = file;
  if (!log) throw new Unreadable(`there are no trials yet: ${file.path} is not there`);
  const kernel = await loadKernel();
  const { read, forecasts } = await withProgress(terminal, options.quiet === true, async (progress) => {
    const read = await readMold(source, kernel, { progress, ...runCache(options) });
    return { read, forecasts: read.mold && toldAir(read.mold) };
  });
  const { plan, mold } = read;
  if (!plan || !mold) {
    terminal.err(showFindings(read.findings, read.units, terminal.width));
    return exitCode.unreadable;
  }
  const summary = summarize(log, plan, cavitiesOf(mold), forecasts);
  if (options.take !== undefined)
    return take(options.take, source, { plan, tries: summary.advice.tries }, terminal);
  if (options.json) terminal.out(JSON.stringify(asJson(summary), null, 2));
  else terminal.out(showTrials({ title: mold.title, log, summary, findings }, mold.units, terminal.width));
  return exitCode.fine;
}

/** Writes one of the proposals, counted as they are printed, into the plan. */
async function take(
  number: string,
  source: PlanSource,
  { plan, tries }: { readonly plan: Plan; readonly tries: readonly Finding[] },
  terminal: Terminal,
): Promise<ExitCode> {
  const said = /^[1-9]\d*$/.test(number) ? tries[Number(number) - 1] : undefined;
  if (!said)
    throw new Unreadable(
      `--take ${number}: ${tries.length} are proposed, counted from 1 as --report prints them`,
    );
  const edited = takeInPlan(new TextDecoder().decode(source.bytes), plan, said);
  if ('fault' in edited) {
    const { fault } = edited;
    throw new Unreadable(
      `${said.code}: ${typeof fault === 'string' ? fault : sayFinding(fault, plan.units).says}`,
    );
  }
  await savePlan(source, edited.text);
  const { remedy } = sayFinding(said, plan.units);
  terminal.out(`${said.code} ${said.subject}: written into ${source.name}. ${remedy}`);
  return exitCode.fine;
}

const cavitiesOf = ({ placements }: Mold): Cavity[] =>
  placements.map(({ id, master, x, y }) => ({ id, master, x, y }));

const asJson = ({ byMaster, byCavity, ...rest }: ReturnType<typeof summarize>) => ({
  ...rest,
  byMaster: Object.fromEntries(byMaster),
  byCavity: Object.fromEntries(byCavity),
});
