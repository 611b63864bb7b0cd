import { toldAir } from '../../src/fill/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { type PlanSource, readMold } from '../../src/pipeline/index.ts';
import { type Cavity, summarize } from '../../src/trials/index.ts';
import { type CacheOption, runCache } from '../cache/kept-results.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { withProgress } from '../progress-line.ts';
import { showFindings } from '../show-findings.ts';
import type { Terminal } from '../terminal.ts';
import type { LogFile } from './log-file.ts';
import { showTrials } from './show-trials.ts';

interface ReportOptions extends CacheOption {
  readonly json?: true;
  readonly quiet?: true;
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
  if (options.json) terminal.out(JSON.stringify(asJson(summary), null, 2));
  else terminal.out(showTrials({ title: mold.title, log, summary, findings }, mold.units, terminal.width));
  return exitCode.fine;
}

const cavitiesOf = ({ placements }: Mold): Cavity[] =>
  placements.map(({ id, master, x, y }) => ({ id, master, x, y }));

const asJson = ({ byMaster, byCavity, ...rest }: ReturnType<typeof summarize>) => ({
  ...rest,
  byMaster: Object.fromEntries(byMaster),
  byCavity: Object.fromEntries(byCavity),
});
