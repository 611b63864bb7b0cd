import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Bench } from '../../../src/preview/worker/bench.ts';
import type { FromWorker, ToOven, ToTable } from '../../../src/preview/worker/messages.ts';

/** A worker that does nothing by itself: what it is told is kept, and the test says what it answers. */
class IdleWorker extends EventTarget {
  readonly told: (ToTable | ToOven)[] = [];
  isEnded = false;

  postMessage(message: ToTable | ToOven): void {
    this.told.push(message);
  }

  terminate(): void {
    this.isEnded = true;
  }

  says(data: FromWorker): void {
    if (!this.isEnded) this.dispatchEvent(new MessageEvent('message', { data }));
  }
}

const workers = vi.hoisted(() => ({ tables: [] as unknown[], ovens: [] as unknown[] }));
vi.mock('../../../src/preview/worker/start-workers.ts', () => {
  const start = (list: unknown[]) => {
    const worker = new IdleWorker();
    list.push(worker);
    return worker;
  };
  return { startTable: () => start(workers.tables), startOven: () => start(workers.ovens) };
});

const table = () => workers.tables.at(-1) as IdleWorker;
const ovens = () => workers.ovens as IdleWorker[];
const plan = { text: 'process: rubber', name: 'plan.yaml', fresh: false };
const report = (edit: number): FromWorker => ({
  kind: 'report',
  edit,
  report: { schema: 2, units: 'metric', title: 'mold', findings: [], figures: [], series: [], fields: [] },
});

let heard: FromWorker[];
let bench: Bench;
beforeEach(() => {
  vi.useFakeTimers();
  workers.tables.length = 0;
  workers.ovens.length = 0;
  heard = [];
  bench = new Bench((message) => heard.push(message));
});
afterEach(() => vi.useRealTimers());

describe('a newer edit', () => {
  test('an answer to an older one is not passed on, whenever it comes', () => {
    const [first, second] = [bench.open(plan), bench.open(plan)];
    const [oven] = ovens();
    oven.says(report(first));
    expect(heard).toEqual([]);
    oven.says(report(second));
    oven.says(report(first));
    expect(heard).toEqual([report(second)]);
  });

  test('the oven is asked to leave off, and kept where it does', () => {
    bench.open(plan);
    const second = bench.open(plan);
    const [oven] = ovens();
    expect(oven.told.at(-1)).toEqual({ kind: 'leave', edit: second });
    oven.says({ kind: 'left', edit: second });
    vi.runAllTimers();
    expect(oven.isEnded).toBe(false);
    expect(ovens()).toHaveLength(1);
  });

  test('stuck in a long step it is ended, and a new one gets what the table has', () => {
    bench.open(plan);
    bench.open(plan);
    const [stuck] = ovens();
    vi.advanceTimersByTime(1000);
    expect(stuck.isEnded).toBe(true);
    const [, fresh] = ovens();
    expect(fresh.isEnded).toBe(false);
    expect(table().told.at(-1)).toMatchObject({ kind: 'meet', goOn: true });
    expect(fresh.told.at(-1)).toMatchObject({ kind: 'meet', goOn: true });
    stuck.says(report(1));
    fresh.says(report(2));
    expect(heard).toEqual([report(2)]);
  });

  test('an oven ended for one edit is not ended again for the next', () => {
    bench.open(plan);
    bench.open(plan);
    vi.advanceTimersByTime(200);
    bench.open(plan);
    vi.advanceTimersByTime(200);
    // The first asking has run out; its successor is not to be ended by the second.
    expect(ovens()).toHaveLength(2);
    vi.runAllTimers();
    expect(ovens()).toHaveLength(2);
  });

  test('an oven with nothing in its hands is left alone', () => {
    const first = bench.open(plan);
    const [oven] = ovens();
    oven.says({
      kind: 'built',
      edit: first,
      report: report(1) as never,
      withheld: [],
      stls: [],
      drawings: 0,
    });
    bench.open(plan);
    expect(oven.told.some(({ kind }) => kind === 'leave')).toBe(false);
  });

  test('a picture of a master is taken from any edit: it is sent but once', () => {
    const first = bench.open(plan);
    bench.open(plan);
    const mesh = { positions: new Float32Array(), normals: new Float32Array(), error: 0, full: 0 };
    table().says({ kind: 'master', edit: first, master: { id: 'leaf', mesh } });
    expect(heard).toHaveLength(1);
  });
});

describe('leaving off', () => {
  test('ends the oven and tells the table, so that it hands nothing over any more', () => {
    const edit = bench.open(plan);
    const [oven] = ovens();
    bench.cancel();
    expect(oven.isEnded).toBe(true);
    expect(table().told.find(({ kind }) => kind === 'leave')).toMatchObject({ edit: edit + 1 });
    expect(table().told.at(-1)).toMatchObject({ kind: 'meet', goOn: false });
    table().says(report(edit));
    expect(heard).toEqual([]);
  });
});
