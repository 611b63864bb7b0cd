import { type Arranged, type LaidOut, layOut } from '../../src/arrange/index.ts';
import type { UnitSystem } from '../../src/findings/index.ts';
import { toDegrees } from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { readMold } from '../../src/pipeline/index.ts';
import { writeArrangement } from '../../src/plan/index.ts';
import { sayFinding, showQuantity } from '../../src/wording/index.ts';
import { type CacheOption, runCache } from '../cache/kept-results.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { openPlan, savePlan } from '../plan-files.ts';
import { withProgress } from '../progress-line.ts';
import { showFindings } from '../show-findings.ts';
import type { Terminal } from '../terminal.ts';

export interface ArrangeOptions extends CacheOption {
  readonly write?: true;
  readonly json?: true;
  readonly quiet?: true;
}

/** Prints where the pieces would lie; writes them into the plan where that is asked and all limits are kept. */
export async function runArrange(
  argument: string,
  options: ArrangeOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const source = await openPlan(argument);
  const kernel = await loadKernel();
  const { read, laidOut } = await withProgress(terminal, options.quiet === true, async (progress) => {
    const read = await readMold(source, kernel, { progress, ...runCache(options) });
    const { plan, mold } = read;
    let done = 0;
    // How many moves it takes is not known before it is over.
    const onMove = () => progress({ title: 'moves', done: ++done, total: Math.ceil((done + 1) / 100) * 100 });
    return { read, laidOut: plan && mold && layOut(plan, mold, { onMove }) };
  });
  const { plan, mold } = read;
  if (!plan || !mold) {
    terminal.err(showFindings(read.findings, read.units, terminal.width));
    return exitCode.unreadable;
  }
  if (!laidOut) throw new Unreadable(`${source.name} wishes for nothing under \`arrange\``);
  const { findings, placements, arranged } = laidOut;
  if (options.json) terminal.out(JSON.stringify(asJson(laidOut), undefined, 2));
  else {
    if (arranged) terminal.out(showArranged(arranged, mold.units));
    if (findings.length > 0) terminal.out(showFindings(findings, mold.units, terminal.width));
  }
  if (!arranged) return exitCode.stop;
  if (!options.write) return exitCode.fine;
  const edited = writeArrangement(new TextDecoder().decode(source.bytes), placements);
  if ('fault' in edited) {
    const { fault } = edited;
    throw new Unreadable(typeof fault === 'string' ? fault : sayFinding(fault, mold.units).says);
  }
  await savePlan(source, edited.text);
  if (!options.json) terminal.out(`\nWritten into ${source.name}.`);
  return exitCode.fine;
}

function showArranged({ laid, wall, moves }: Arranged, units: UnitSystem): string {
  const kinds = [...new Set(laid.map(({ kind }) => kind))];
  const lines = kinds.map((kind) => {
    const own = laid.filter((one) => one.kind === kind);
    const count = own.reduce((sum, { copies }) => sum + copies, 0);
    const places = own.map(({ copies, radius, angleRad }) => {
      const at = `${showQuantity(radius, 'mm', units)} from the axis, ${Math.round(toDegrees(angleRad))} degrees`;
      return copies > 1 ? `${copies} round ${at}` : `at ${at}`;
    });
    return `${kind.id}: ${count}; ${places.join('; ')}`;
  });
  const least = Number.isFinite(wall)
    ? [`least wall between two, seen from above: ${showQuantity(wall, 'mm', units)}`]
    : [];
  return [...lines, ...least, `found in ${moves} moves`].join('\n');
}

const asJson = ({ arranged, placements, findings }: LaidOut) => ({
  placements,
  ...(arranged && { wall: Number.isFinite(arranged.wall) ? arranged.wall : null, moves: arranged.moves }),
  left: arranged?.left.map(({ kind, count }) => ({ master: kind.id, count })) ?? [],
  findings,
});
