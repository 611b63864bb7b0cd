import { stat } from 'node:fs/promises';
import { mmPerInch } from '../../src/geometry/index.ts';
import type { PlanWish } from '../../src/pipeline/index.ts';
import { quantityFinding, readQuantity, starterPlan } from '../../src/plan/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { batchName } from '../batch/batch-folder.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import type { Terminal } from '../terminal.ts';
import { writeNew } from '../write-new.ts';
import { runNewFrom } from './new-from.ts';

const processes = ['rubber', 'rigid', 'poured'] as const;
const units = ['mm', 'in'] as const;
/** Of a starter plan where none is said; common practice, no published source. */
const usualDiameter = { mm: '250', in: '9' } as const;

/** The unit people mean by another spelling of it; what is none stays as it is. */
function unitNamed(written: string): string {
  const plain = written.toLowerCase();
  if (plain === 'inch' || plain === 'inches') return 'in';
  return units.find((unit) => unit === plain) ?? written;
}

/** As a plan's schema has it. */
const longestTitle = 120;

export interface NewOptions {
  readonly diameter?: string;
  readonly process: string;
  readonly unit: string;
  readonly from?: readonly string[];
  readonly count?: readonly string[];
}

/** Writes a commented starter plan, or a whole one from meshes, or prints it; never overwrites a file. */
export async function runNew(
  file: string | undefined,
  options: NewOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const process = oneOf('--process', options.process, processes);
  const unit = oneOf('--unit', unitNamed(options.unit), units);
  const diameter = options.diameter ?? usualDiameter[unit];
  const bare = Number(diameter);
  const read = readQuantity(
    Number.isFinite(bare) ? bare * (unit === 'in' ? mmPerInch : 1) : diameter,
    'length',
  );
  if ('fault' in read) {
    const { says } = sayFinding(quantityFinding(read.fault, '--diameter'), 'metric');
    throw new Unreadable(`--diameter ${diameter}: ${says}`);
  }
  if (!(read.value >= 60 && read.value <= 1000)) {
    throw new Unreadable(`--diameter ${diameter}: starter plans are made for discs of 60 to 1000 mm`);
  }
  const title = file === undefined ? undefined : titleOf(file);
  const starter = { diameter: read.value, process, unit, title };
  const counts = countsOf(options.count ?? []);
  if (options.from) {
    if (file === undefined)
      throw new Unreadable('--from needs a file to write: its meshes are named from there');
    if (await isThere(file)) throw new Unreadable(`${file} is there already; nothing was written`);
    return runNewFrom(file, options.from, { ...starter, ...counts }, terminal);
  }
  if (options.count) throw new Unreadable('--count says how many of the meshes of --from; there are none');
  const text = starterPlan(starter);
  if (file === undefined) {
    terminal.out(text.trimEnd());
    return exitCode.fine;
  }
  await writeNew(file, text);
  terminal.out(`${file} written; try: discwright build ${file}`);
  return exitCode.fine;
}

/** `6` for each, `beetle=6` for one. */
function countsOf(written: readonly string[]): Pick<PlanWish, 'counts' | 'each'> {
  const counts = new Map<string, number>();
  let each: number | undefined;
  for (const one of written) {
    const [, name, digits] = /^(?:([\w-]+)=)?(\d{1,3})$/.exec(one) ?? [];
    const count = Number(digits);
    if (!(count >= 1 && count <= 200))
      throw new Unreadable(
        `--count ${one} is not known; use a number from 1 to 200, or one for a master, such as beetle=6`,
      );
    if (name === undefined) each = count;
    else counts.set(name, count);
  }
  return { counts, each };
}

async function isThere(file: string): Promise<boolean> {
  try {
    await stat(file);
    return true;
  } catch {
    // That it cannot be written is said when it is.
    return false;
  }
}

/** `oak-buttons.yaml` is a plan of oak buttons; a `plan.yaml` is of what its folder is called. */
function titleOf(file: string): string | undefined {
  const words = batchName(file)
    .normalize('NFC')
    .replaceAll(/[\s_-]+/gu, ' ')
    .trim();
  const letters = [...words.replaceAll(/\p{Cc}/gu, '')].slice(0, longestTitle);
  return letters.length === 0 ? undefined : [letters[0].toUpperCase(), ...letters.slice(1)].join('');
}

function oneOf<const T extends string>(option: string, value: string, allowed: readonly T[]): T {
  const found = allowed.find((one) => one === value);
  if (!found) throw new Unreadable(`${option} ${value} is not known; use one of ${allowed.join(', ')}`);
  return found;
}
