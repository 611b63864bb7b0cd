import type { Build } from '../../export/index.ts';
import { stepTold } from '../../fill/index.ts';
import type { Field } from '../../findings/index.ts';
import type { Kernel } from '../../kernel/index.ts';
import {
  buildMold,
  Cache,
  type MeshOutcome,
  memoizeIn,
  placeMold,
  stepChecks,
  stepFields,
} from '../../pipeline/index.ts';
import { ChannelTrial } from './channel-trial.ts';
import { collectFiles } from './collect-files.ts';
import { loadAndShow } from './load-together.ts';
import type {
  BuildRequest,
  BuiltRequest,
  Loaded,
  LoadRequest,
  ToBuildWorker,
  TryChannel,
} from './messages.ts';
import { proposeText } from './propose-text.ts';
import { Outdated, onEdit, send, workerKernel, yieldToEvents } from './send.ts';
import { showChannels } from './show-channels.ts';
import { showFilling } from './show-filling.ts';
import { showSolids } from './show-solids.ts';
import { showWalls } from './show-walls.ts';

const cache = new Cache();
let latest = 0;
let working = Promise.resolve();
/** How often requests were canceled. */
let cancels = 0;
/** The mold as it was placed last, for gates and vents to be tried on. */
let placed: { readonly request: BuildRequest; readonly trial: ChannelTrial } | undefined;
let built: { readonly edit: number; readonly build: Build } | undefined;

globalThis.onmessage = ({ data }: MessageEvent<ToBuildWorker>) => {
  if (data.kind === 'connect') {
    const { port } = data;
    port.onmessage = ({ data }: MessageEvent<BuildRequest | LoadRequest>) => {
      latest = data.edit;
      working = working.then(() =>
        onEdit(data.edit, () => (data.kind === 'build' ? build(data) : load(data, port))),
      );
    };
  } else if (data.kind === 'leave') {
    latest = data.edit;
    send({ kind: 'left', edit: data.edit });
  } else if (data.kind === 'cancel') {
    cancels++;
    send({ kind: 'left', edit: latest });
  }
  // Between two steps of other work.
  else if (data.kind === 'try') void onEdit(data.edit, async () => answerTry(data));
  else {
    const cancelsThen = cancels;
    const isWanted = () => cancels === cancelsThen && data.edit === latest;
    working = working.then(() => onEdit(data.edit, () => run(data, isWanted)));
  }
};

function answerTry(asked: TryChannel): void {
  const { edit, ask, id, name } = asked;
  const nothing = { ask, id, placement: name.placement, isFree: true, took: 0 };
  send({ kind: 'tried', edit, ...(placed?.request.edit === edit ? placed.trial.run(asked) : nothing) });
}

/** Helps the layout worker, which does itself what is not done here. The mesh is handed over: what is built comes from there. */
async function load(data: LoadRequest, port: MessagePort): Promise<void> {
  await yieldToEvents();
  let outcome: MeshOutcome | undefined;
  try {
    if (data.edit === latest) outcome = loadAndShow(data, await workerKernel());
  } finally {
    const { mesh } = outcome ?? {};
    const transferred = mesh ? [mesh.positions.buffer, mesh.triangles.buffer] : [];
    port.postMessage(
      { ask: data.ask, ...(outcome && { outcome }) } satisfies Loaded,
      transferred as Transferable[],
    );
  }
}

async function build(request: BuildRequest): Promise<void> {
  const { edit, plan, masters, findings: found, planBytes } = request;
  const pause = async () => {
    await yieldToEvents();
    if (edit !== latest) throw new Outdated();
  };
  const progress = (step: { title: string; done: number; total: number }) =>
    send({ kind: 'step', edit, ...step });
  const kernel = await workerKernel();
  await pause();
  progress({ title: 'parting surface', done: 0, total: 1 });
  const { mold, findings } = placeMold(plan, masters, found, { cache });
  placed = { request, trial: new ChannelTrial(plan, mold, memoizeIn(cache)) };
  if (!mold.parting.flat) showChannels(edit, mold);
  await pause();
  const steps = stepChecks(mold, findings, kernel, { cache, progress });
  for (;;) {
    const step = steps.next();
    if (step.done) {
      send({ kind: 'report', edit, report: step.value });
      break;
    }
    await pause();
  }
  await pause();
  const { build } = await buildMold(mold, findings, { planBytes, version: __VERSION__ }, kernel, {
    cache,
    progress,
  });
  await pause();
  built = { edit, build };
  const solids = build.solids.map(({ solid }) => solid);
  showSolids(edit, solids, kernel, true);
  const withheld = build.withheld.map(({ title, reasons }) => ({ title, reasons }));
  const stls = build.solids.map(({ name }) => name);
  send({ kind: 'built', edit, report: build.report, withheld, stls, drawings: build.drawings.length });
}

/** Answers a request to the finished build, with a stop at each step. */
async function run(request: BuiltRequest, isWanted: () => boolean): Promise<void> {
  const { edit } = request;
  const step = async (title: string, done: number, total: number): Promise<void> => {
    if (isWanted()) send({ kind: 'step', edit, title, done, total });
    await yieldToEvents();
    if (!isWanted()) throw new Outdated();
  };
  if (built?.edit !== edit) throw new Error('the mold is not built yet');
  const { build } = built;
  if (request.kind === 'files') {
    const { bytes, name } = await collectFiles(build, request, step);
    await step(name, 1, 1);
    send({ kind: 'files', edit, bytes, name });
    return;
  }
  if (request.kind === 'filling') {
    send({ kind: 'filling', edit, cavities: await showFilling(build.mold, step) });
    return;
  }
  if (request.kind === 'told') {
    const steps = stepTold(build.mold);
    for (;;) {
      const next = steps.next();
      if (next.done) {
        send({ kind: 'told', edit, forecasts: next.value });
        return;
      }
      await step('Forecast', next.value, build.mold.placements.length);
    }
  }
  if (request.kind === 'propose') {
    await step('Gates and vents', 0, 1);
    if (placed?.request.edit !== edit) throw new Error('the mold is not laid out yet');
    const progress = (at: { title: string; done: number; total: number }) =>
      send({ kind: 'step', edit, ...at });
    const found = proposeText(placed.request, build.mold, {
      only: request.only,
      memoize: memoizeIn(cache),
      progress,
    });
    send({ kind: 'proposed', edit, ...found });
    return;
  }
  const kernel = await workerKernel();
  const walls = showWalls(build.mold, await wallFields(build, kernel, step), kernel);
  send(
    { kind: 'walls', edit, walls },
    walls.meshes.map(({ mesh }) => mesh),
  );
}

async function wallFields(
  { mold }: Build,
  kernel: Kernel,
  step: (title: string, done: number, total: number) => Promise<void>,
): Promise<readonly Field[]> {
  let now = { title: 'Walls', done: 0, total: 1 };
  const steps = stepFields(mold, kernel, {
    cache,
    progress: (progress) => {
      now = progress;
    },
  });
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value;
    await step(now.title, now.done, now.total);
  }
}
