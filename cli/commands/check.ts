import { reportJson } from '../../src/export/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { checkMold, readMold, unreadReport } from '../../src/pipeline/index.ts';
import { tally } from '../../src/wording/index.ts';
import { type ExitCode, exitCode } from '../exit.ts';
import { openPlan } from '../plan-files.ts';
import { withProgress } from '../progress-line.ts';
import { showMasters } from '../show-masters.ts';
import { showFields, showFigures, showFindings } from '../show-report.ts';
import { strong, type Terminal } from '../terminal.ts';

export interface CheckOptions {
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
  const { plan, mold, report } = await withProgress(terminal, options.quiet === true, async (progress) => {
    const { plan, mold, findings, units } = await readMold(source, kernel, { progress });
    return {
      plan,
      mold,
      report: mold
        ? checkMold(mold, findings, kernel, { progress, fields: options.fields === true })
        : unreadReport(findings, units),
    };
  });
  if (options.json) {
    terminal.out(new TextDecoder().decode(reportJson(report)).trimEnd());
  } else if (plan && mold) {
    const shown = [
      strong(`${report.title}: ${tally(report.findings)}`),
      showFindings(report.findings, report.units),
    ];
    terminal.out(
      [
        ...shown,
        [showMasters(plan, mold, report), showFigures(report)].filter((text) => text !== '').join('\n'),
        showFields(report),
      ]
        .filter((text) => text !== '')
        .join('\n\n'),
    );
  } else {
    terminal.err(showFindings(report.findings, report.units));
  }
  if (!mold) return exitCode.unreadable;
  return report.findings.some(({ severity }) => severity === 'stop') ? exitCode.stop : exitCode.fine;
}
