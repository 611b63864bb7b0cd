import { join } from 'node:path';
import { type Build, type ExportFile, writeBuild } from '../../src/export/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { buildMold, readMold } from '../../src/pipeline/index.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { folderName } from '../folder-name.ts';
import { openPlan } from '../plan-files.ts';
import { progressLine } from '../progress-line.ts';
import { showQuantity } from '../show-quantity.ts';
import { showFigures, showFindings, tally } from '../show-report.ts';
import { strong, type Terminal, table } from '../terminal.ts';
import { version } from '../version.ts';
import { writeFolder } from '../write-folder.ts';

export interface BuildCommandOptions {
  readonly out: string;
  readonly only?: readonly string[];
  readonly json?: true;
  readonly quiet?: true;
}

/** Builds a plan into a folder; exit 1 when a stop withheld something, 2 when the input cannot be read. */
export async function runBuild(
  argument: string,
  options: BuildCommandOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const source = await openPlan(argument);
  const kernel = await loadKernel();
  const progress = progressLine(terminal, options.quiet === true || options.json === true);
  const { mold, findings } = await readMold(source, kernel, { progress: progress.step });
  if (!mold) {
    progress.end();
    terminal.err(showFindings(findings));
    return exitCode.unreadable;
  }
  const { build, unmatched } = await buildMold(mold, findings, { planBytes: source.bytes, version }, kernel, {
    progress: progress.step,
    ...(options.only && { only: options.only }),
  });
  progress.end();
  if (unmatched.length > 0) {
    const known = [...build.solids.map(({ solid }) => solid.id), ...build.withheld.map(({ id }) => id)];
    throw new Unreadable(
      `no solid of this plan begins with ${unmatched.join(', ')}${known.length > 0 ? `; also asked for: ${known.join(', ')}` : ''}`,
    );
  }
  const files = await writeBuild(build);
  const folder = join(options.out, folderName(mold.title));
  await writeFolder(folder, files);
  if (options.json) terminal.out(asJson(build, files));
  else if (!options.quiet) terminal.out(describe(build, folder));
  else if (build.withheld.length > 0) terminal.err(describeWithheld(build));
  return build.report.findings.some(({ severity }) => severity === 'stop') ? exitCode.stop : exitCode.fine;
}

const asJson = (build: Build, files: readonly ExportFile[]): string => {
  const text = (path: string) => new TextDecoder().decode(files.find((file) => file.path === path)?.bytes);
  return JSON.stringify({
    withheld: build.withheld,
    manifest: JSON.parse(text('manifest.json')),
    report: JSON.parse(text('report.json')),
  });
};

function describe(build: Build, folder: string): string {
  const { findings } = build.report;
  const rows = build.solids.map(({ name, audit }) => [
    name,
    String(audit.triangles),
    showQuantity(audit.volume, 'mm3'),
    audit.bounds.max.map((high, axis) => (high - audit.bounds.min[axis]).toFixed(1)).join(' x '),
  ]);
  return [
    strong(`${build.mold.title}: ${tally(findings)}`),
    showFindings(findings),
    showFigures(build.report),
    rows.length > 0 ? table([['solid', 'triangles', 'volume', 'size, mm'], ...rows], [1, 2]) : '',
    describeWithheld(build),
    `${build.solids.length} solids, the report and the manifest are in ${folder}`,
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

const describeWithheld = (build: Build): string =>
  build.withheld.map(({ title, reasons }) => `withheld: ${title}: ${reasons.join(' ')}`).join('\n');
