/**
 * All fixtures of the demo (all solids but the halves) against the kernel calls they are made with, in the same run:
 * time of the whole work over the time spent within the kernel's seam. What is over 1 is the program's own: choosing
 * shapes, height maps, rounding, judging. Run with `npx tsx bench/fixtures.ts` (`npm run masters` first).
 */
import { join } from 'node:path';
import { openPlan } from '../cli/plan-files.ts';
import { type Kernel, loadKernel } from '../src/kernel/index.ts';
import { Scope } from '../src/kernel/kernel.ts';
import type { Part, Tools } from '../src/mold/index.ts';
import { parts } from '../src/parts/index.ts';
import { Cache } from '../src/pipeline/cache.ts';
import { readMold } from '../src/pipeline/index.ts';
import { memoizeIn } from '../src/pipeline/memoize-in.ts';

const aim = 1.3;
const rounds = 3;
/** Their cavities are bench/halves.ts's matter. */
const leftOut = ['halves', 'pattern-plate'];

const seam = { inside: 0, depth: 0 };

/** Wraps every call of the seam, so that time within the outermost one is added up. */
function watchSeam(): void {
  const calls = Scope.prototype as unknown as Record<string, (...args: unknown[]) => unknown>;
  for (const name of Object.getOwnPropertyNames(calls)) {
    if (name === 'constructor') continue;
    const plain = calls[name];
    calls[name] = function (this: unknown, ...args: unknown[]) {
      const start = performance.now();
      seam.depth++;
      try {
        return plain.apply(this, args);
      } finally {
        seam.depth--;
        if (seam.depth === 0) seam.inside += performance.now() - start;
      }
    };
  }
}

interface Times {
  readonly whole: number;
  readonly inside: number;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

function timed(work: () => void): Times {
  seam.inside = 0;
  const start = performance.now();
  work();
  return { whole: performance.now() - start, inside: seam.inside };
}

function show(what: string, times: readonly Times[]): number {
  const ratio = median(times.map(({ whole, inside }) => whole / inside));
  const ms = (pick: (one: Times) => number): string => median(times.map(pick)).toFixed(0);
  console.log(
    `  ${what}: ${ms(({ whole }) => whole)} ms, ${ms(({ inside }) => inside)} ms of it in the kernel: ${ratio.toFixed(2)}`,
  );
  return ratio;
}

function runAll(units: ReturnType<Part['units']>, tools: Tools): void {
  for (const unit of units) unit.run(tools);
}

async function compare(kernel: Kernel): Promise<void> {
  const source = await openPlan(join(import.meta.dirname, '..', 'presets', 'hedgerow'));
  const { mold } = await readMold(source, kernel);
  if (!mold) throw new Error('the demo cannot be read');
  watchSeam();
  const units = parts
    .filter(({ id }) => !leftOut.includes(id))
    .map((part) => ({ title: part.title, jobs: part.units(mold) }))
    .filter((one) => one.jobs.length > 0);
  const all: Times[] = [];
  const each = units.map(({ title }) => ({ title, times: [] as Times[] }));
  for (let round = 0; round <= rounds; round++) {
    // As in a build, what one part has found another need not find again.
    const tools: Tools = { kernel, memoize: memoizeIn(new Cache()) };
    const times = units.map((one) => timed(() => runAll(one.jobs, tools)));
    // The first round warms up.
    if (round === 0) continue;
    for (const [k, time] of times.entries()) each[k].times.push(time);
    const sum = (pick: (one: Times) => number): number => times.reduce((total, one) => total + pick(one), 0);
    all.push({ whole: sum(({ whole }) => whole), inside: sum(({ inside }) => inside) });
  }
  for (const { title, times } of each) show(title, times);
  const ratio = show('all', all);
  console.log(
    `all fixtures against the kernel calls: ${ratio.toFixed(2)}, aim at most ${aim}: ${ratio <= aim ? 'met' : 'MISSED'}`,
  );
}

await compare(await loadKernel());
