/**
 * The tests of one run of `mutation.ts`, loaded into this file, and after them all changes, one by one. Against a change are run
 * those tests alone that reach it, what killed others of its file first, else the quickest first, until one fails. A change
 * with which ten times as many switches are passed as without, or that takes 20 times as long, counts as seen. Tests over `slow` are left
 * out, a change gets `most` in all, and what tests share (made as they are loaded, or before all) stays as made without: all this
 * can only let a change survive. `static` is what is reached only while files are loaded.
 */
import { setMaxListeners } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import {
  afterEach,
  beforeEach,
  describe,
  expect,
  it,
  type RunnerTestCase,
  type RunnerTestSuite,
  TestRunner,
} from 'vitest';
import { Cache } from '../src/pipeline/index.ts';
import type { Change, Outcome, Run } from './mutation.ts';

/** A test that takes longer is left out, and a change gets no more in all, ms of the processor. */
const [slow, most] = [300, 600];

const processorMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

type Counts = Record<string, number>;

/** What the changed code and this file share, there already where changed code is loaded with it; names by the instrumenter. */
interface Switch {
  currentTestId: string | undefined;
  mutantCoverage: { static: Counts; perTest: Record<string, Counts> };
}
const shared = globalThis as { __stryker__?: Partial<Switch> };
const control: Switch = Object.assign(shared.__stryker__ ?? {}, {
  currentTestId: undefined,
  mutantCoverage: shared.__stryker__?.mutantCoverage ?? { static: {}, perTest: {} },
});
shared.__stryker__ = control;

/** The change that is on; the changed code asks for it at each of its switches, and is ended where it asks without end. */
let active: string | undefined;
let [asked, mayAsk, until] = [0, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
Object.defineProperty(control, 'activeMutant', {
  get: () => {
    asked += 1;
    if (asked > mayAsk || (asked % 16 === 0 && processorMs() > until)) throw new Error('comes to no end');
    return active;
  },
});
const reachedBy = control.mutantCoverage.perTest;

/** Adds what was reached within what a test asked for to what the test reached. */
function alsoReached(test: string | undefined, within: Counts): void {
  if (test !== undefined) reachedBy[test] ??= {};
  const reached = test === undefined ? control.mutantCoverage.static : reachedBy[test];
  for (const [id, times] of Object.entries(within)) reached[id] = (reached[id] ?? 0) + times;
}

/** Results are kept as ever, but none that a change has had a hand in while that is on. */
function keepPerChange(): void {
  const kept = new Map<string, unknown>();
  Cache.prototype.memoize = <T>(key: string, make: () => T): T => {
    const { currentTestId } = control;
    const within = `kept ${key}`;
    if (active !== undefined) {
      const safe = kept.has(key) && reachedBy[within]?.[active] === undefined;
      return safe ? (kept.get(key) as T) : make();
    }
    if (!kept.has(key)) {
      control.currentTestId = within;
      try {
        kept.set(key, make());
      } finally {
        control.currentTestId = currentTestId;
      }
    }
    alsoReached(currentTestId, reachedBy[within] ?? {});
    return kept.get(key) as T;
  };
}

/** A test, what it takes, how many changes of a file it has seen, and how many switches it passes. */
type Tried = RunnerTestCase & { ms: number; kills: Counts; switches: number };

async function passes(test: RunnerTestCase): Promise<boolean> {
  try {
    await TestRunner.getTestFn(test)();
    return true;
  } catch {
    return false;
  }
}

const testsIn = ({ tasks }: RunnerTestSuite): RunnerTestCase[] =>
  tasks.flatMap((task) => (task.type === 'suite' ? testsIn(task) : [task]));

const switchesOf = ({ id }: RunnerTestCase): number =>
  Object.values(reachedBy[id] ?? {}).reduce((sum, times) => sum + times, 0);

async function timed(tests: readonly RunnerTestCase[]): Promise<Tried[]> {
  const tried: Tried[] = [];
  for (const test of tests) {
    // Each time it is run it listens for being broken off.
    setMaxListeners(0, test.context.signal);
    const start = processorMs();
    const good = await passes(test);
    const ms = processorMs() - start;
    if (!good) throw new Error(`${test.fullName} fails when it is run a second time`);
    if (ms > slow) console.log(`left out, ${Math.round(ms)} ms: ${test.fullName}`);
    else tried.push(Object.assign(test, { ms, kills: {}, switches: switchesOf(test) }));
  }
  return tried;
}

async function tryChange(change: Change, tests: readonly Tried[]): Promise<Outcome> {
  const { id, file } = change;
  const covering = tests.filter((test) => reachedBy[test.id]?.[id] !== undefined);
  if (covering.length === 0)
    return { ...change, end: control.mutantCoverage.static[id] === undefined ? 'not covered' : 'static' };
  const cost = ({ ms, kills }: Tried): number => ms / (1 + (kills[file] ?? 0));
  covering.sort((a, b) => cost(a) - cost(b));
  const start = processorMs();
  active = id;
  try {
    for (const test of covering) {
      [asked, mayAsk, until] = [0, 10_000 + 10 * test.switches, processorMs() + 20 * test.ms + 1000];
      if (!(await passes(test))) {
        test.kills[file] = (test.kills[file] ?? 0) + 1;
        return { ...change, end: 'killed', by: test.fullName };
      }
      if (processorMs() - start > most) break;
    }
    return { ...change, end: 'survived' };
  } finally {
    active = undefined;
    [mayAsk, until] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  }
}

/** Every sixteenth, then those after them, and so on: what is tried before time is up is drawn from all files alike. */
const scattered = (changes: readonly Change[]): Change[] =>
  Array.from({ length: 16 }, (_, from) => changes.filter((_, i) => i % 16 === from)).flat();

const { MUTATION_RUN } = process.env;
if (MUTATION_RUN === undefined) throw new Error('is run by mutation.ts');
const run: Run = JSON.parse(readFileSync(MUTATION_RUN, 'utf8'));
const faults = new RegExp(run.faults);
keepPerChange();

/** Plans with one fault of other rooms say little here and take long. */
const concerns = ({ fullName, name }: RunnerTestCase): boolean =>
  !fullName.includes('single-faults') || !name.includes(' yields ') || faults.test(name.replace(/^'/, ''));

beforeEach(({ task, skip }) => {
  if (!concerns(task)) skip();
  control.currentTestId = task.id;
});
afterEach(() => {
  control.currentTestId = undefined;
});

for (const file of run.tests) describe(basename(file), () => import(/* @vite-ignore */ file));

it('the changes', async ({ task }) => {
  control.currentTestId = 'run again';
  const all = testsIn(task.file).filter((test) => test !== task && test.mode === 'run' && concerns(test));
  const tests = await timed(all);
  const outcomes: Outcome[] = [];
  const end = Date.now() + run.minutes * 60_000;
  for (const change of scattered(run.changes))
    outcomes.push(Date.now() < end ? await tryChange(change, tests) : { ...change, end: 'not tried' });
  writeFileSync(run.out, JSON.stringify(outcomes));
  const broken = [];
  for (const test of tests) if (!(await passes(test))) broken.push(test.fullName);
  expect(broken, 'tests that fail without a change after all changes').toEqual([]);
});
