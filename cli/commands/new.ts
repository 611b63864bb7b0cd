import { writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { mmPerInch } from '../../src/geometry/index.ts';
import { quantityFinding, readQuantity, starterPlan } from '../../src/plan/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { batchName } from '../batch/batch-folder.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import type { Terminal } from '../terminal.ts';

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

/** Writes a commented starter plan, or prints it; never overwrites a file. */
export async function runNew(
  file: string | undefined,
  options: { readonly diameter?: string; readonly process: string; readonly unit: string },
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
  const text = starterPlan({
    diameter: read.value,
    process,
    unit,
    title: file === undefined ? undefined : titleOf(file),
  });
  if (file === undefined) {
    terminal.out(text.trimEnd());
    return exitCode.fine;
  }
  try {
    await writeFile(file, text, { flag: 'wx' });
  } catch (error) {
    throw new Unreadable(sayWhy(file, error));
  }
  terminal.out(`${file} written; try: discwright build ${file}`);
  return exitCode.fine;
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

function sayWhy(file: string, error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'EEXIST') return `${file} is there already; nothing was written`;
  if (code === 'ENOENT') return `cannot write ${file}: there is no folder ${dirname(file)}`;
  if (code === 'EACCES' || code === 'EPERM') return `cannot write ${file}: you may not write there`;
  return `cannot write ${file} (${code ?? String(error)})`;
}

function oneOf<const T extends string>(option: string, value: string, allowed: readonly T[]): T {
  const found = allowed.find((one) => one === value);
  if (!found) throw new Unreadable(`${option} ${value} is not known; use one of ${allowed.join(', ')}`);
  return found;
}
