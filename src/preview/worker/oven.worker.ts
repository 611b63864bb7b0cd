import type { Build } from '../../export/index.ts';
import type { Field } from '../../findings/index.ts';
import type { Kernel } from '../../kernel/index.ts';
import {
  buildMold,
  Cache,
  type MeshOutcome,
  placeMold,
  stepChecks,
  stepFields,
} from '../../pipeline/index.ts';
import { mendAndShow } from './load-together.ts';
import type { Bake, Errand, Mend, Mended, ToOven } from './messages.ts';
import { showChannels } from './show-channels.ts';
import { showSolids } from './show-solids.ts';
import { showWalls } from './show-walls.ts';
import { takeFiles } from './take.ts';
import { breath, Outdated, onEdit, tell, workerKernel } from './tell.ts';

const cache = new Cache();
let latest = 0;
let working = Promise.resolve();
/** How often errands were dropped. */
let drops = 0;
let built: { readonly edit: number; readonly build: Build } | undefined;

globalThis.onmessage = ({ data }: MessageEvent<ToOven>) => {
  if (data.kind === 'meet') {
    const { port } = data;
    port.onmessage = ({ data }: MessageEvent<Bake | Mend>) => {
      latest = data.edit;
      working = working.then(() =>
        onEdit(data.edit, () => (data.kind === 'bake' ? bake(data) : mend(data, port))),
      );
    };
  } else if (data.kind === 'leave') {
    latest = data.edit;
    tell({ kind: 'left', edit: data.edit });
  } else if (data.kind === 'drop') drops++;
  else {
    const dropsThen = drops;
    const isWanted = () => drops === dropsThen && data.edit === latest;
    working = working.then(() => onEdit(data.edit, () => run(data, isWanted)));
  }
};

/** Helps the table, which does itself what is not done here. The mesh is handed over: what is baked comes from there. */
async function mend(data: Mend, port: MessagePort): Promise<void> {
  await breath();
  let outcome: MeshOutcome | undefined;
  try {
    if (data.edit === latest) outcome = mendAndShow(data, await workerKernel());
  } finally {
    const { mesh } = outcome ?? {};
    const handed = mesh ? [mesh.positions.buffer, mesh.triangles.buffer] : [];
    port.postMessage(
      { ask: data.ask, ...(outcome && { outcome }) } satisfies Mended,
      handed as Transferable[],
    );
  }
}

async function bake({ edit, plan, masters, findings: found, planBytes }: Bake): Promise<void> {
  const pause = async () => {
    await breath();
    if (edit !== latest) throw new Outdated();
  };
  const progress = (step: { title: string; done: number; total: number }) =>
    tell({ kind: 'step', edit, ...step });
  const kernel = await workerKernel();
  await pause();
  progress({ title: 'parting surface', done: 0, total: 1 });
  const { mold, findings } = placeMold(plan, masters, found, { cache });
  if (!mold.parting.flat) showChannels(edit, mold);
  await pause();
  const steps = stepChecks(mold, findings, kernel, { cache, progress });
  for (;;) {
    const step = steps.next();
    if (step.done) {
      tell({ kind: 'report', edit, report: step.value });
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
  tell({ kind: 'built', edit, report: build.report, withheld, stls, drawings: build.drawings.length });
}

/** Does an errand on the finished build, with a stop at each step. */
async function run(errand: Errand, isWanted: () => boolean): Promise<void> {
  const { edit } = errand;
  const step = async (title: string, done: number, total: number): Promise<void> => {
    if (isWanted()) tell({ kind: 'step', edit, title, done, total });
    await breath();
    if (!isWanted()) throw new Outdated();
  };
  if (built?.edit !== edit) throw new Error('the mold is not built yet');
  const { build } = built;
  if (errand.kind === 'take') {
    const { bytes, name } = await takeFiles(build, errand, step);
    await step(name, 1, 1);
    tell({ kind: 'taken', edit, bytes, name });
    return;
  }
  const kernel = await workerKernel();
  const walls = showWalls(build.mold, await wallFields(build, kernel, step), kernel);
  tell(
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
