import { answersOf, type MasterSize, masterSizes, reportJson } from '../../src/export/index.ts';
import type { Report } from '../../src/findings/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { checkMold, readMold, unreadReport } from '../../src/pipeline/index.ts';
import { tally } from '../../src/wording/index.ts';
import { type CacheOption, runCache } from '../cache/kept-results.ts';
import { type ExitCode, exitCode } from '../exit.ts';
import { openPlan } from '../plan-files.ts';
import { withProgress } from '../progress-line.ts';
import { showAnswers } from '../show-answers.ts';
import { showFindings } from '../show-findings.ts';
import { showMasters } from '../show-masters.ts';
import { showFields, showFigures } from '../show-report.ts';
import { strong, type Terminal } from '../terminal.ts';

export interface CheckOptions extends CacheOption {
  readonly json?: true;
  readonly quiet?: true;
  readonly fields?: true;
}

/** Prints the findings, worst first, then the figures; exit 1 when one says stop, 2 when the plan cannot be read. */
export async function runCheck(
  argument: string,
  options: CheckOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const source = await openPlan(argument);
  const kernel = await loadKernel();
  const kept = runCache(options);
  const { plan, mold, report } = await withProgress(terminal, options.quiet === true, async (progress) => {
    const { plan, mold, findings, units } = await readMold(source, kernel, { progress, ...kept });
    return {
      plan,
      mold,
      report: mold
        ? checkMold(mold, findings, kernel, { progress, ...kept, fields: options.fields === true })
        : unreadReport(findings, units),
    };
  });
  const { width } = terminal;
  const masters = plan && mold && masterSizes(plan, mold, report);
  if (options.json) {
    terminal.out(new TextDecoder().decode(reportJson(report, masters)).trimEnd());
  } else if (mold && masters) {
    terminal.out(describeCheck(mold, masters, report, width));
  } else {
    terminal.err(showFindings(report.findings, report.units, width));
  }
  if (!mold) return exitCode.unreadable;
  return report.findings.some(({ severity }) => severity === 'stop') ? exitCode.stop : exitCode.fine;
}

/** The answers on top, then what was found, worst first, and all figures. */
export const describeCheck = (
  mold: Mold,
  masters: readonly MasterSize[],
  report: Report,
  width: number,
): string =>
  [
    strong(`${report.title}: ${tally(report.findings)}`),
    showAnswers(answersOf(mold, report), width),
    showFindings(report.findings, report.units, width),
    [showMasters(masters, report.units, width), showFigures(report, width)]
      .filter((text) => text !== '')
      .join('\n'),
    showFields(report, width),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
