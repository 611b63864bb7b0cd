import { join } from 'node:path';
import {
  answersOf,
  type Build,
  type ExportFile,
  reportJson,
  usualFormats,
  whatToMake,
  writeBuild,
} from '../../src/export/index.ts';
import { type Cause, causesByCode, type UnitSystem } from '../../src/findings/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { kinds } from '../../src/kinds/index.ts';
import { buildMold, readMold, unreadReport } from '../../src/pipeline/index.ts';
import { sayCause, saysOfAll, tally } from '../../src/wording/index.ts';
import { inputsKey } from '../batch/variant-key.ts';
import { type CacheOption, runCache } from '../cache/kept-results.ts';
import { joinEarlier, planFile, refuseOtherPlan } from '../earlier-build.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { folderName } from '../folder-name.ts';
import { readFonts } from '../fonts.ts';
import { formatsAsked } from '../formats-asked.ts';
import { onlyAsked } from '../only-asked.ts';
import { openPlan } from '../plan-files.ts';
import { withProgress } from '../progress-line.ts';
import { showAnswers } from '../show-answers.ts';
import { showFindings } from '../show-findings.ts';
import { showFigures } from '../show-report.ts';
import { showWhatToMake } from '../show-what-to-make.ts';
import { strong, type Terminal, wrap } from '../terminal.ts';
import { version } from '../version.ts';
import { writeFolder } from '../write-folder.ts';

export interface BuildCommandOptions extends CacheOption {
  readonly out: string;
  readonly only?: readonly string[];
  /** Ids of formats; all where left out. */
  readonly formats?: readonly string[];
  /** Whether a folder built from another plan is given up. */
  readonly replace?: true;
  readonly json?: true;
  readonly quiet?: true;
}

/** Builds a plan into a folder; exit 1 when a finding says stop, 2 when the input cannot be read. */
export async function runBuild(
  argument: string,
  options: BuildCommandOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const formats = formatsAsked(options.formats, usualFormats);
  const source = await openPlan(argument);
  const names = onlyAsked(options.only);
  const only = names && { only: names };
  const origin = { file: planFile(source.name), inputs: await inputsKey(source), ...only };
  const kernel = await loadKernel();
  const kept = runCache(options);
  const { findings, units, outcome } = await withProgress(
    terminal,
    options.quiet === true,
    async (progress) => {
      const { mold, findings, units } = await readMold(source, kernel, { progress, ...kept });
      if (!mold) return { findings, units };
      // Said before the long work, not after it.
      if (!options.replace) await refuseOtherPlan(join(options.out, folderName(mold.title)), origin);
      const plan = { planBytes: source.bytes, version };
      const outcome = await buildMold(mold, findings, plan, kernel, { progress, ...kept, ...only });
      return { findings, units, outcome };
    },
  );
  if (!outcome) {
    if (options.json)
      terminal.out(JSON.stringify({ report: asData(reportJson(unreadReport(findings, units))) }));
    else terminal.err(showFindings(findings, units, terminal.width));
    return exitCode.unreadable;
  }
  const { build, unmatched } = outcome;
  if (unmatched.length > 0) throw new Unreadable(sayUnmatched(unmatched, build));
  const folder = join(options.out, folderName(build.mold.title));
  const built = await writeBuild({ ...build, origin }, { fonts: readFonts }, formats);
  const { files, dropped } = only ? await joinEarlier(folder, built, origin) : { files: built, dropped: [] };
  await writeFolder(folder, files);
  if (options.json) terminal.out(asJson(build, files));
  else if (!options.quiet) terminal.out(describe(build, folder, dropped, built, terminal.width));
  else if (build.withheld.length > 0) terminal.err(describeWithheld(build, terminal.width));
  return build.report.findings.some(({ severity }) => severity === 'stop') ? exitCode.stop : exitCode.fine;
}

/** How many names of solids are offered when one was not found. */
const mostOffered = 24;

function sayUnmatched(unmatched: readonly string[], build: Build): string {
  const made = [...build.solids.map(({ solid }) => solid), ...build.drawings, ...build.withheld, ...kinds];
  const known = [...new Set(made.map(({ id }) => id))];
  const offered = known.slice(0, mostOffered).join(', ') + (known.length > mostOffered ? ', ...' : '');
  return `no solid or drawing of this plan begins with ${unmatched.join(', ')}; names and kinds are ${offered}; nothing was written`;
}

const asData = (bytes: Uint8Array | undefined): unknown => JSON.parse(new TextDecoder().decode(bytes));

const asJson = (build: Build, files: readonly ExportFile[]): string => {
  const { units } = build.report;
  return JSON.stringify({
    withheld: build.withheld.map((one) => ({ ...one, reasons: saysOfAll(one.reasons, units) })),
    manifest: asData(files.find(({ path }) => path === 'manifest.json')?.bytes),
    report: asData(reportJson(build.report)),
  });
};

function describe(
  build: Build,
  folder: string,
  dropped: readonly string[],
  files: readonly ExportFile[],
  width: number,
): string {
  const { findings, units } = build.report;
  return [
    strong(`${build.mold.title}: ${tally(findings)}`),
    showAnswers(answersOf(build.mold, build.report), width),
    showFindings(findings, units, width),
    showFigures(build.report, width),
    showWhatToMake(whatToMake(build, 'own'), width),
    describeWithheld(build, width),
    describeDropped(dropped, width),
    wrap(`${written(files)} are in ${folder}`, width),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

/** Such as `3 STL, the shop sheet, the report and the manifest`: only what is there. */
function written(files: readonly ExportFile[]): string {
  const count = (ending: string): number => files.filter(({ path }) => path.endsWith(ending)).length;
  const formats = ['stl', '3mf', 'svg', 'dxf'].filter((ending) => count(`.${ending}`) > 0);
  const papers = [
    ['shop-sheet.pdf', 'the shop sheet'],
    ['report.json', 'the report'],
  ].flatMap(([path, title]) => (files.some((file) => file.path.endsWith(path)) ? [title] : []));
  const all = [...formats.map((ending) => `${count(`.${ending}`)} ${ending.toUpperCase()}`), ...papers];
  return `${all.join(', ')}${all.length > 0 ? ' and ' : ''}the manifest`;
}

const describeDropped = (dropped: readonly string[], width: number): string =>
  dropped.length === 0
    ? ''
    : wrap(
        `taken away, for plan, masters or program have changed since: ${dropped.join(', ')}`,
        width,
        '',
        '  ',
      );

/** Why, once for all that it is about. */
function sayReason(cause: Cause, units: UnitSystem): string {
  const { says, subjects } = sayCause(cause, units);
  return cause.findings.length > 1 ? `${says.replace(/\.$/, '')} (${subjects}).` : says;
}

/** Solids withheld for the same reasons in one paragraph. */
function describeWithheld({ withheld, report }: Build, width: number): string {
  const byReasons = new Map<string, string[]>();
  for (const { title, reasons } of withheld) {
    const causes = causesByCode(reasons).flat();
    const key = causes.map((cause) => sayReason(cause, report.units)).join(' ');
    byReasons.set(key, [...(byReasons.get(key) ?? []), title]);
  }
  return [...byReasons]
    .map(([reasons, titles]) => wrap(`withheld: ${titles.join(', ')}. ${reasons}`, width, '', '  '))
    .join('\n');
}
