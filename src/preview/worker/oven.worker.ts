import { type Build, writeBuild } from '../../export/index.ts';
import { buildMold, Cache, layMold, stepChecks } from '../../pipeline/index.ts';
import type { Bake, ToOven } from './messages.ts';
import { showSolids } from './show-solids.ts';
import { breath, Outdated, onEdit, tell, workerKernel } from './tell.ts';

/** What the zip holds. */
const taken = ['stl', '3mf', 'report'];
const supplies = {
  fonts: () => Promise.reject(new Error('the shop sheet is not made in the page')),
};

const cache = new Cache();
let latest = 0;
let working = Promise.resolve();
let built: { readonly edit: number; readonly build: Build } | undefined;

globalThis.onmessage = ({ data }: MessageEvent<ToOven>) => {
  if (data.kind === 'meet') {
    data.port.onmessage = ({ data }: MessageEvent<Bake>) => {
      latest = data.edit;
      working = working.then(() => onEdit(data.edit, () => bake(data)));
    };
  } else if (data.kind === 'leave') {
    latest = data.edit;
    tell({ kind: 'left', edit: data.edit });
  } else {
    void onEdit(data.edit, () => take(data.edit));
  }
};

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
  const { mold, findings } = layMold(plan, masters, found, { cache });
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
  tell({ kind: 'built', edit, report: build.report, withheld });
}

/** The files of the last build, zipped; the same bytes as the command writes. */
async function take(edit: number): Promise<void> {
  if (built?.edit !== edit) throw new Error('the mold is not built yet');
  const { zipSync } = await import('fflate');
  const files = await writeBuild(built.build, supplies, taken);
  // A fixed time, so that the same plan gives the same bytes: the earliest a zip can hold.
  const entries = Object.fromEntries(files.map(({ path, bytes }) => [path, bytes]));
  const zip = zipSync(entries, { mtime: new Date(1980, 0, 1), level: 6 });
  tell({ kind: 'taken', edit, zip, name: `${built.build.mold.title}.zip` });
}
