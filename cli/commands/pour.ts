import { expandPlacements, type Plan, readPlan } from '../../src/plan/index.ts';
import { castingsIn, type PourWritten, readLog, withPour } from '../../src/trials/index.ts';
import type { CacheOption } from '../cache/kept-results.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { openPlan } from '../plan-files.ts';
import { askPour } from '../pours/ask-pour.ts';
import { type LogFile, openLog, saveLog } from '../pours/log-file.ts';
import { readSettings } from '../pours/read-settings.ts';
import { showFindings } from '../show-findings.ts';
import type { Terminal } from '../terminal.ts';

export interface PourOptions extends CacheOption {
  readonly set?: readonly string[];
  readonly report?: true;
  readonly take?: string;
  readonly json?: true;
  readonly quiet?: true;
}

/** Notes what came of a pour in the trial log beside the plan; or says what follows from all of them. */
export async function runPour(argument: string, options: PourOptions, terminal: Terminal): Promise<ExitCode> {
  const source = await openPlan(argument);
  const { plan, findings, units } = readPlan(source.bytes, source.name);
  if (!plan) {
    terminal.err(showFindings(findings, units, terminal.width));
    return exitCode.unreadable;
  }
  const file = await openLog(source.name, plan);
  if (file.bytes && !file.log) {
    terminal.err(showFindings(file.findings, units, terminal.width));
    return exitCode.unreadable;
  }
  if (options.report || options.take !== undefined) {
    const { runPourReport } = await import('../pours/report.ts');
    return runPourReport(source, file, options, terminal);
  }
  return notePour(plan, file, options, terminal);
}

async function notePour(
  plan: Plan,
  file: LogFile,
  { set }: PourOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const next = 1 + Math.max(0, ...(file.log?.pours ?? []).map(({ pour }) => pour));
  const pour = set ? readSettings(set, plan, next) : await asked(plan, next, terminal);
  if (!pour) {
    terminal.err('Broken off; nothing was written.');
    return exitCode.interrupted;
  }
  const before = file.bytes && new TextDecoder().decode(file.bytes);
  const text = withPour(before, pour, plan);
  // What was typed is held to the same rules as what is written by hand.
  const { log, findings } = readLog(text, file.path, plan);
  const noted = log?.pours.at(-1);
  if (!noted) {
    // It stands in no file yet.
    const unwritten = findings.map(({ at: _, ...one }) => one);
    terminal.err(showFindings(unwritten, plan.units, terminal.width));
    return exitCode.unreadable;
  }
  await saveLog(file, text);
  const castings = castingsIn(
    noted,
    expandPlacements(plan).map(({ id }) => id),
  );
  const bad = castings.filter(({ came }) => came.some((one) => one !== 'good')).length;
  const came = castings.length === 0 ? 'no casting looked at' : `${castings.length - bad} good, ${bad} not`;
  terminal.out(`Pour ${noted.pour} noted in ${file.path}: ${came}.`);
  return exitCode.fine;
}

async function asked(plan: Plan, next: number, terminal: Terminal): Promise<PourWritten | undefined> {
  const asking = terminal.openAsk?.();
  if (!asking) throw new Unreadable('nobody is there to be asked; give what came of the pour by --set');
  terminal.err(`Pour ${next}. An empty line leaves a question out, or takes what stands in brackets.`);
  try {
    return await askPour(asking.ask, plan, next);
  } finally {
    asking.close();
  }
}
