import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { FromWorker, ToBuildWorker, ToLayoutWorker } from '../../../src/preview/worker/messages.ts';
import { WorkerClient } from '../../../src/preview/worker/worker-client.ts';

/** A worker that does nothing by itself: what it is told is kept, and the test says what it answers. */
class IdleWorker extends EventTarget {
  readonly told: (ToLayoutWorker | ToBuildWorker)[] = [];
  isEnded = false;

  postMessage(message: ToLayoutWorker | ToBuildWorker): void {
    this.told.push(message);
  }

  terminate(): void {
    this.isEnded = true;
  }

  says(data: FromWorker): void {
    if (!this.isEnded) this.dispatchEvent(new MessageEvent('message', { data }));
  }
}

const workers = vi.hoisted(() => ({ layout: [] as unknown[], build: [] as unknown[] }));
vi.mock('../../../src/preview/worker/start-workers.ts', () => {
  const start = (list: unknown[]) => {
    const worker = new IdleWorker();
    list.push(worker);
    return worker;
  };
  return { startLayoutWorker: () => start(workers.layout), startBuildWorker: () => start(workers.build) };
});

const layoutWorker = () => workers.layout.at(-1) as IdleWorker;
const buildWorkers = () => workers.build as IdleWorker[];
const plan = { text: 'process: rubber', name: 'plan.yaml', fresh: false };
const report = (edit: number): FromWorker => ({
  kind: 'report',
  edit,
  report: { schema: 2, units: 'metric', title: 'mold', findings: [], figures: [], series: [], fields: [] },
});

let received: FromWorker[];
let client: WorkerClient;
beforeEach(() => {
  vi.useFakeTimers();
  workers.layout.length = 0;
  workers.build.length = 0;
  received = [];
  client = new WorkerClient((message) => received.push(message));
});
afterEach(() => vi.useRealTimers());

describe('a newer edit', () => {
  test('an answer to an older one is not passed on, whenever it comes', () => {
    const [first, second] = [client.open(plan), client.open(plan)];
    const [buildWorker] = buildWorkers();
    buildWorker.says(report(first));
    expect(received).toEqual([]);
    buildWorker.says(report(second));
    buildWorker.says(report(first));
    expect(received).toEqual([report(second)]);
  });

  test('the build worker is asked to leave off, and kept where it does', () => {
    client.open(plan);
    const second = client.open(plan);
    const [buildWorker] = buildWorkers();
    expect(buildWorker.told.at(-1)).toEqual({ kind: 'leave', edit: second });
    buildWorker.says({ kind: 'left', edit: second });
    vi.runAllTimers();
    expect(buildWorker.isEnded).toBe(false);
    expect(buildWorkers()).toHaveLength(1);
  });

  test('stuck in a long step it is ended, and a new one gets what the table has', () => {
    client.open(plan);
    client.open(plan);
    const [stuck] = buildWorkers();
    vi.advanceTimersByTime(1000);
    expect(stuck.isEnded).toBe(true);
    const [, fresh] = buildWorkers();
    expect(fresh.isEnded).toBe(false);
    expect(layoutWorker().told.at(-1)).toMatchObject({ kind: 'connect', goOn: true });
    expect(fresh.told.at(-1)).toMatchObject({ kind: 'connect', goOn: true });
    stuck.says(report(1));
    fresh.says(report(2));
    expect(received).toEqual([report(2)]);
  });

  test('a build worker ended for one edit is not ended again for the next', () => {
    client.open(plan);
    client.open(plan);
    vi.advanceTimersByTime(200);
    client.open(plan);
    vi.advanceTimersByTime(200);
    // The first asking has run out; its successor is not to be ended by the second.
    expect(buildWorkers()).toHaveLength(2);
    vi.runAllTimers();
    expect(buildWorkers()).toHaveLength(2);
  });

  test('a build worker with nothing to do is left alone', () => {
    const first = client.open(plan);
    const [buildWorker] = buildWorkers();
    buildWorker.says({
      kind: 'built',
      edit: first,
      report: report(1) as never,
      withheld: [],
      stls: [],
      drawings: 0,
    });
    client.open(plan);
    expect(buildWorker.told.some(({ kind }) => kind === 'leave')).toBe(false);
  });

  test('a picture of a master is taken from any edit: it is sent but once', () => {
    const first = client.open(plan);
    client.open(plan);
    const mesh = { positions: new Float32Array(), normals: new Float32Array(), error: 0, full: 0 };
    layoutWorker().says({ kind: 'master', edit: first, master: { id: 'leaf', mesh } });
    expect(received).toHaveLength(1);
  });
});

describe('leaving off', () => {
  test('ends the build worker and tells the layout worker, so that it hands nothing over any more', () => {
    const edit = client.open(plan);
    const [buildWorker] = buildWorkers();
    client.cancel();
    expect(buildWorker.isEnded).toBe(true);
    expect(layoutWorker().told.find(({ kind }) => kind === 'leave')).toMatchObject({ edit: edit + 1 });
    expect(layoutWorker().told.at(-1)).toMatchObject({ kind: 'connect', goOn: false });
    layoutWorker().says(report(edit));
    expect(received).toEqual([]);
  });
});

describe('something wanted of the finished build', () => {
  const built = (edit: number): FromWorker => {
    const { report: made } = report(edit) as Extract<FromWorker, { kind: 'report' }>;
    return { kind: 'built', edit, report: made, withheld: [], stls: [], drawings: 0 };
  };

  test('canceled in a long step, the worker is ended and a new one builds again', () => {
    const edit = client.open(plan);
    const [stuck] = buildWorkers();
    stuck.says(built(edit));
    client.request({ kind: 'propose' });
    client.cancel();
    vi.advanceTimersByTime(1000);
    expect(stuck.isEnded).toBe(true);
    expect(layoutWorker().told.at(-1)).toMatchObject({ kind: 'connect', goOn: true });
    buildWorkers()[1].says(report(edit));
    expect(received.at(-1)).toEqual(report(edit));
  });

  test('files left off are waited for: in no step the build is given up, nor for a newer edit', () => {
    const edit = client.open(plan);
    const [worker] = buildWorkers();
    worker.says(built(edit));
    client.request({ kind: 'files', formats: ['3mf'] });
    client.cancel();
    vi.runAllTimers();
    expect(worker.told.at(-1)).toEqual({ kind: 'cancel' });
    expect(worker.isEnded).toBe(false);
    client.request({ kind: 'files', formats: ['3mf'] });
    client.open(plan);
    vi.runAllTimers();
    expect(worker.isEnded).toBe(false);
  });

  test('a proposal that has come is over: files left off after it end no worker', () => {
    const edit = client.open(plan);
    const [worker] = buildWorkers();
    worker.says(built(edit));
    client.request({ kind: 'propose' });
    client.request({ kind: 'files', formats: ['3mf'] });
    worker.says({ kind: 'fault', edit, says: 'nothing to gate' });
    client.cancel();
    vi.runAllTimers();
    expect(worker.isEnded).toBe(false);
  });

  test('canceled between two steps, it stays with its build', () => {
    const edit = client.open(plan);
    const [worker] = buildWorkers();
    worker.says(built(edit));
    client.request({ kind: 'propose' });
    client.cancel();
    worker.says({ kind: 'left', edit });
    vi.runAllTimers();
    expect(worker.isEnded).toBe(false);
  });
});
