import { changeOf, proposeChannels, whyGate, whyWay } from '../../src/fill/index.ts';
import type { Finding, UnitSystem } from '../../src/findings/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { readMold } from '../../src/pipeline/index.ts';
import { writeChannels } from '../../src/plan/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { type CacheOption, runCache } from '../cache/kept-results.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { openPlan, savePlan } from '../plan-files.ts';
import { withProgress } from '../progress-line.ts';
import { showFindings } from '../show-findings.ts';
import { proposalsAsData, showProposals } from '../show-proposals.ts';
import type { Terminal } from '../terminal.ts';

export interface GateOptions extends CacheOption {
  readonly write?: true;
  readonly json?: true;
  readonly quiet?: true;
}

/** Prints the gates and vents that are proposed; writes them into the plan where that is asked. */
export async function runGate(argument: string, options: GateOptions, terminal: Terminal): Promise<ExitCode> {
  const source = await openPlan(argument);
  const kernel = await loadKernel();
  const { read, proposed } = await withProgress(terminal, options.quiet === true, async (progress) => {
    const read = await readMold(source, kernel, { progress, ...runCache(options) });
    const { plan, mold } = read;
    return { read, proposed: plan && mold && proposeChannels(plan, mold, { progress }) };
  });
  const { plan, mold } = read;
  if (!plan || !mold || !proposed) {
    terminal.err(showFindings(read.findings, read.units, terminal.width));
    return exitCode.unreadable;
  }
  if ('missing' in proposed)
    throw new Unreadable(`how it fills is not known without ${proposed.missing.join(' and ') || 'a sprue'}`);
  const { proposals } = proposed;
  if (proposals.length === 0)
    throw new Unreadable(
      `there is nothing to gate: ${source.name} places no master across the parting plane`,
    );
  terminal.out(
    options.json
      ? JSON.stringify(proposalsAsData(proposals), undefined, 2)
      : showProposals(proposals, mold.units, terminal.width),
  );
  if (!options.write) return exitCode.fine;
  const change = changeOf(plan, proposed, {
    gate: (one) => whyGate(one, mold.units),
    way: (one) => whyWay(one, mold.units),
  });
  const edited = writeChannels(new TextDecoder().decode(source.bytes), change);
  if ('fault' in edited) throw new Unreadable(sayFault(edited.fault, mold.units));
  await savePlan(source, edited.text);
  if (!options.json) terminal.out(`\nWritten into ${source.name}.`);
  return exitCode.fine;
}

const sayFault = (fault: string | Finding, units: UnitSystem): string =>
  typeof fault === 'string' ? fault : sayFinding(fault, units).says;
