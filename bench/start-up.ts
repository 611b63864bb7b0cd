/**
 * Start-up and writing, each as a ratio to a baseline run in turn with it in the same process:
 * `discwright --help` and `discwright check` on the smallest preset against `node -e 0`, and writing a
 * 1 000 000-triangle STL from a mesh against writing the same bytes alone. Run `npm run compile` first.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { auditStl } from '../src/export/audit.ts';
import { writeStl } from '../src/export/stl.ts';
import { torus } from '../tests/export/shapes.ts';

const program = join(import.meta.dirname, '..', 'dist', 'cli', 'main.js');

function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** Runs each work in turn, `rounds` times after one that does not count; medians in ms by name. */
function inTurn(works: Record<string, () => void>, rounds: number): Record<string, number> {
  const times: Record<string, number[]> = Object.fromEntries(Object.keys(works).map((name) => [name, []]));
  for (let round = 0; round <= rounds; round++) {
    for (const [name, work] of Object.entries(works)) {
      const ms = timed(work);
      if (round > 0) times[name].push(ms);
    }
  }
  return Object.fromEntries(Object.entries(times).map(([name, values]) => [name, median(values)]));
}

/** `allowed`: exit codes that count as an answer (1: the check found a stop). */
function run(args: readonly string[], allowed: readonly number[] = [0]): void {
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status === null || !allowed.includes(status))
    throw new Error(`${args.join(' ')}: exit ${status}\n${stderr}`);
}

function ratio(what: string, ms: number, baseline: number, aim?: number): void {
  const value = ms / baseline;
  const verdict = aim === undefined ? '' : `, aim at most ${aim}: ${value <= aim ? 'met' : 'MISSED'}`;
  console.log(
    `${what}: ${value.toFixed(2)} (${ms.toFixed(0)} ms against ${baseline.toFixed(0)} ms${verdict})`,
  );
}

function startUp(): void {
  if (!existsSync(program)) {
    console.log('start-up not measured: dist/cli/main.js is not there (npm run compile)');
    return;
  }
  const presets = join(import.meta.dirname, '..', 'presets');
  const plans = existsSync(presets) ? readdirSync(presets, { recursive: true, encoding: 'utf8' }) : [];
  const bySize = plans
    .filter((path) => /\.ya?ml$/.test(path))
    .map((path) => ({ path, size: statSync(join(presets, path)).size }));
  const smallest = bySize.sort((a, b) => a.size - b.size || (a.path < b.path ? -1 : 1))[0];
  const works: Record<string, () => void> = {
    node: () => run(['-e', '0']),
    help: () => run([program, '--help']),
  };
  if (smallest) works.check = () => run([program, 'check', join(presets, smallest.path)], [0, 1]);
  else console.log('check not measured: presets/ holds no plan');
  const { node, help, check } = inTurn(works, 15);
  ratio('--help against node -e 0', help, node, 3);
  if (smallest) ratio(`check ${smallest.path} against node -e 0`, check, node, 8);
}

function writing(): void {
  const mesh = torus(100, 20, 1000, 500);
  const bytes = writeStl(mesh, 'bench');
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  try {
    const { plain, ours, audit } = inTurn(
      {
        plain: () => writeFileSync(join(folder, 'plain.stl'), bytes),
        ours: () => writeFileSync(join(folder, 'ours.stl'), writeStl(mesh, 'bench')),
        audit: () => {
          auditStl(bytes);
        },
      },
      7,
    );
    const what = `${mesh.triangles.length / 3} triangles, ${bytes.length} bytes`;
    ratio(`mesh to STL file (${what}) against writing the bytes alone`, ours, plain, 3);
    ratio('audit of it against writing the bytes alone', audit, plain);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

startUp();
writing();
