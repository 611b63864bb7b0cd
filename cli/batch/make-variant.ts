import { basename, join } from 'node:path';
import {
  bareManifest,
  type ExportFile,
  type Origin,
  reportJson,
  sha256Hex,
  writeBuild,
} from '../../src/export/index.ts';
import { type Finding, finding, type UnitSystem } from '../../src/findings/index.ts';
import { KernelExhausted, loadKernel } from '../../src/kernel/index.ts';
import {
  buildMold,
  Cache,
  type PlanSource,
  placeMold,
  readMasters,
  unreadReport,
} from '../../src/pipeline/index.ts';
import { readPlan, setInPlan } from '../../src/plan/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { keptResults, runCache } from '../cache/kept-results.ts';
import { joinEarlier, planFile } from '../earlier-build.ts';
import { NoRoom, Unreadable } from '../exit.ts';
import { readFonts } from '../fonts.ts';
import { openPlan } from '../plan-files.ts';
import { version } from '../version.ts';
import { writeFolder } from '../write-folder.ts';
import { cacheFiles } from './cache-files.ts';
import { finishedFile, readFinished } from './finished.ts';
import { titleVariant } from './title-variant.ts';
import type { Variant } from './variant.ts';
import { inputsKey, variantKey } from './variant-key.ts';
import { builtRow, unbuiltRow, type VariantRow } from './variant-row.ts';

/** What a worker needs to make one variant; sent to it as plain data. */
export interface VariantTask {
  /** The plan as named on the command line: what it names lies beside it. */
  readonly plan: string;
  /** Its text when the batch began. */
  readonly text: string;
  readonly variant: Variant;
  /** The batch's folder. */
  readonly folder: string;
  readonly only?: readonly string[];
  readonly formats: readonly string[];
  readonly cache: boolean;
}

export interface VariantOutcome {
  readonly name: string;
  /**
   * `kept`: finished by an earlier run, and nothing it rests on has changed. `unwritten`: its folder cannot be written.
   * `no room`: nor can any other.
   */
  readonly state: 'made' | 'kept' | 'unwritten' | 'no room';
  readonly built: boolean;
  readonly stops: number;
  readonly warnings: number;
  /** Why it was not built or written, or its first stop. */
  readonly reason?: string;
}

/** Masters as the last variants used them; none of what is made from them, so that memory stays bounded. */
let masters = new Cache(0);
let room = 0;

/** Makes one variant in its folder, whole or not at all; runs in a worker. */
export async function makeVariant(task: VariantTask): Promise<VariantOutcome> {
  const { variant, folder } = task;
  try {
    const target = join(folder, variant.name);
    const opened = await openPlan(task.plan);
    const set =
      variant.fault === undefined ? setInPlan(task.text, variant.settings) : { fault: variant.fault };
    const text = 'fault' in set ? task.text : set.text;
    const source = {
      bytes: new TextEncoder().encode(text),
      // Not as typed: the same plan reached by another path gives the same bytes.
      name: basename(opened.name),
      files: cacheFiles(opened.files),
    };
    const { name, given, settings } = variant;
    const asked = { only: task.only, formats: task.formats, name, given, settings };
    const inputs = await inputsKey(source);
    const key = variantKey(asked, inputs);
    const origin = { file: planFile(opened.name), inputs, ...(task.only && { only: task.only }) };
    const made = { ...source, key, origin };
    const before = await readFinished(target);
    if (before?.key === key && before.row.built) return outcome(before.row, 'kept');
    const { row, files } =
      'fault' in set
        ? await unbuilt(task, made, [badRow(variant, set.fault)], readPlan(source.bytes, source.name).units)
        : await build(task, made);
    await writeFolder(target, task.only ? (await joinEarlier(target, files, origin)).files : files);
    return outcome(row, 'made');
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    return {
      name: variant.name,
      state: error instanceof NoRoom ? 'no room' : 'unwritten',
      built: false,
      stops: 0,
      warnings: 0,
      reason: error.message,
    };
  }
}

/** A variant's plan, with what names its result. */
interface VariantSource extends PlanSource {
  readonly key: string;
  readonly origin: Origin;
}

interface Made {
  readonly row: VariantRow;
  readonly files: readonly ExportFile[];
}

/** Tried once more with a fresh kernel: what earlier variants left in the memory of this one may have been too much. */
async function build(task: VariantTask, source: VariantSource, tries = 2): Promise<Made> {
  try {
    return await buildOnce(task, source);
  } catch (error) {
    if (!(error instanceof KernelExhausted)) throw error;
    if (tries > 1) return build(task, source, tries - 1);
    const { units } = readPlan(source.bytes, source.name);
    const values = { fault: capital(error.message) };
    return unbuilt(task, source, [finding('batch.too-large', { subject: task.variant.name, values })], units);
  }
}

async function buildOnce(task: VariantTask, source: VariantSource): Promise<Made> {
  const kernel = await loadKernel();
  const kept = runCache(task);
  const read = await readMasters(source, kernel, { cache: mastersOf(source, task) });
  const { plan } = read;
  if (!plan || !read.masters) {
    return unbuilt(task, source, [...badCells(task, source), ...read.findings], read.units);
  }
  const { mold, findings } = placeMold(
    titleVariant(plan, task.variant, read.units),
    read.masters,
    read.findings,
    kept,
  );
  const { build, unmatched } = await buildMold(mold, findings, { planBytes: source.bytes, version }, kernel, {
    ...kept,
    ...(task.only && { only: task.only }),
  });
  if (unmatched.length > 0) {
    const values = { names: unmatched };
    return unbuilt(
      task,
      source,
      [finding('batch.nothing-asked-for', { subject: task.variant.name, values })],
      read.units,
    );
  }
  const row = builtRow(task.variant, build, task.formats.includes('overview') && build.solids.length > 0);
  const { key, origin } = source;
  const files = await writeBuild({ ...build, origin }, { fonts: readFonts }, task.formats, [
    finishedFile({ key, row }),
  ]);
  return { row, files };
}

/** The worker's cache, with room for this plan's masters and a few that another variant names. */
function mastersOf({ bytes, name }: PlanSource, task: VariantTask): Cache {
  const count = Object.keys(readPlan(bytes, name).plan?.masters ?? {}).length;
  if (count > room) {
    room = count;
    masters = new Cache(count + 4, keptResults(task));
  }
  return masters;
}

/** The folder of a variant that no mold came of: it says why. */
async function unbuilt(
  task: VariantTask,
  { bytes, key, origin }: VariantSource,
  findings: readonly Finding[],
  units: UnitSystem,
): Promise<Made> {
  const row = unbuiltRow(task.variant, findings, units);
  const report = { path: 'report.json', bytes: reportJson(unreadReport(findings, units)) };
  const files = [report, finishedFile({ key, row })];
  const manifest = await bareManifest({ planHash: await sha256Hex(bytes), version, origin }, files);
  return { row, files: [...files, manifest] };
}

const badRow = ({ name }: Variant, fault: string): Finding =>
  finding('batch.bad-cell', { subject: name, values: { which: 'row', fault: capital(fault) } });

const capital = (text: string): string => `${text[0].toUpperCase()}${text.slice(1)}`;

/** The cells of a row that spoil the plan each by itself. */
function badCells({ text, variant }: VariantTask, { name }: PlanSource): Finding[] {
  const { row, settings } = variant;
  if (row === undefined) return [];
  return settings.flatMap((setting) => {
    const set = setInPlan(text, [setting]);
    const fault = 'fault' in set ? set.fault : firstStop(set.text, name);
    if (fault === undefined) return [];
    const { path: column, value } = setting;
    const values = { which: 'cell', row, column, value, fault: withoutDot(fault) } as const;
    return [finding('batch.bad-cell', { subject: variant.name, values })];
  });
}

/** What the first stop in reading a plan says. */
function firstStop(text: string, name: string): string | undefined {
  const { findings, units } = readPlan(text, name);
  const stop = findings.find(({ severity }) => severity === 'stop');
  return stop && sayFinding(stop, units).says;
}

const withoutDot = (text: string): string => text.replace(/\.$/, '');

function outcome(row: VariantRow, state: VariantOutcome['state']): VariantOutcome {
  const { name, built, stops, warnings } = row;
  const reason = row.open.find(({ severity }) => severity === 'stop')?.says;
  return { name, state, built, stops, warnings, ...(reason !== undefined && { reason }) };
}
