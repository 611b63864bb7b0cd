import { dirname, relative, resolve, sep } from 'node:path';
import { loadKernel } from '../../src/kernel/index.ts';
import {
  type FirstPlan,
  type MeshFile,
  mastersNamed,
  type PlanWish,
  planFromMeshes,
} from '../../src/pipeline/index.ts';
import { mostFileBytes } from '../../src/preview/server/regular-file.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { readNamed } from '../plan-files.ts';
import { withProgress } from '../progress-line.ts';
import { showFindings } from '../show-findings.ts';
import type { Terminal } from '../terminal.ts';
import { writeNew } from '../write-new.ts';

/** Writes a whole plan made from mesh files, and says what a person has to decide. */
export async function runNewFrom(
  file: string,
  paths: readonly string[],
  wish: PlanWish,
  terminal: Terminal,
): Promise<ExitCode> {
  const meshes = await Promise.all(paths.map((path) => openMesh(file, path)));
  const names = mastersNamed(meshes);
  const stray = [...wish.counts.keys()].find((name) => !names.includes(name));
  if (stray !== undefined)
    throw new Unreadable(`--count ${stray}: the meshes are called ${names.join(', ')}`);
  const kernel = await loadKernel();
  const made = await withProgress(terminal, false, (progress) =>
    planFromMeshes(meshes, wish, kernel, progress),
  );
  await writeNew(file, made.text);
  terminal.out(show(file, made));
  if (made.toDecide.length > 0) {
    terminal.out('\nTo be decided by you:');
    terminal.out(showFindings(made.toDecide, made.report?.units ?? unitsOf(wish), terminal.width));
  }
  const { laid, toDecide } = made;
  const stops = laid.length === 0 || toDecide.some(({ severity }) => severity === 'stop');
  return stops ? exitCode.stop : exitCode.fine;
}

const unitsOf = ({ unit }: PlanWish) => (unit === 'in' ? 'inch' : 'metric');

/** By its path from the plan's folder, as the plan is to name it. */
async function openMesh(plan: string, path: string): Promise<MeshFile> {
  const read = await readNamed(path, mostFileBytes);
  if ('fault' in read) throw new Unreadable(read.fault);
  return {
    path: relative(dirname(resolve(plan)), resolve(path))
      .split(sep)
      .join('/'),
    bytes: read.bytes,
  };
}

function show(file: string, { laid, report }: FirstPlan): string {
  const all = laid.reduce((sum, { count }) => sum + count, 0);
  if (all === 0) return `${file} written, with nothing on the disc`;
  const of = laid.map(({ master, count }) => `${count} ${master}`).join(', ');
  const warnings = report?.findings.filter(({ severity }) => severity === 'warn').length ?? 0;
  const more = warnings > 0 ? `; discwright check ${file} has ${warnings} warnings` : '';
  return `${file} written: ${all} pieces: ${of}${more}`;
}
