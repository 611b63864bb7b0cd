import type { Kernel } from '../../kernel/index.ts';
import type { Master, Mold } from '../../mold/index.ts';
import {
  Cache,
  checkNear,
  type FileAccess,
  placeMold,
  readMasters,
  roughError,
  roughMold,
  sketchSolids,
} from '../../pipeline/index.ts';
import { type Plan, readPlan } from '../../plan/index.ts';
import { PageFiles } from './files.ts';
import { Helper, loadTogether } from './load-together.ts';
import type { AskNear, BuildRequest, OpenPlan, ShownMold, ToLayoutWorker } from './messages.ts';
import { mostTriangles, shownMesh } from './reduce.ts';
import { Outdated, onEdit, send, workerKernel, yieldToEvents } from './send.ts';
import { showChannels } from './show-channels.ts';
import { showSolids } from './show-solids.ts';
import { warmUpMoves } from './warm-up.ts';
import { withDragged } from './with-dragged.ts';

/** Parts that take next to no time and hang on neither masters nor parting surface. */
const quick = ['disc-blank', 'sprue-form', 'plug', 'bosses', 'notch'];

const cache = new Cache();
/** Meshes of fixtures, from one question about walls to the next; one that is moved leaves another each time. */
const fixtures = new Cache(50);
const files = new PageFiles();
const shown = new Map<string, object>();
const helper = new Helper();
let buildWorker: MessagePort | undefined;
let lastBuild: BuildRequest | undefined;
let laid: { readonly edit: number; readonly mold: Mold } | undefined;
let wanted: AskNear | undefined;
let latest = 0;
/** The edit opened last; where its work was left off, `latest` is a newer one. */
let opened = 0;
/** Whether something was moved, by hand or to warm up. */
let isWarm = false;
let working = Promise.resolve();

globalThis.onmessage = ({ data }: MessageEvent<ToLayoutWorker>) => {
  if (data.kind === 'keep') files.keep(data.name, data.bytes);
  else if (data.kind === 'forget') files.forget();
  else if (data.kind === 'leave') latest = data.edit;
  else if (data.kind === 'connect') {
    buildWorker = data.port;
    helper.connect(data.port);
    // The build worker before it was ended with this in its hands.
    if (data.goOn && lastBuild?.edit === latest) buildWorker.postMessage(lastBuild);
  } else if (data.kind === 'near') {
    // Between two steps of other work; answered for the edit that is with the layout worker.
    void workerKernel().then((kernel) => near(data, kernel));
  } else {
    latest = data.edit;
    opened = data.edit;
    // One at a time: the older one leaves off at its next stop.
    working = working.then(() => onEdit(data.edit, () => open(data)));
  }
};

async function open({ edit, text, name, filesAt, fresh }: OpenPlan): Promise<void> {
  const isLatest = () => edit === latest;
  if (!isLatest()) return;
  const kernel = await workerKernel();
  const bytes = new TextEncoder().encode(text);
  const access = files.access(filesAt, isLatest);
  if (fresh) await showSoon(edit, readPlan(bytes, name).plan, access, kernel);
  if (!isLatest()) return;
  const { plan, masters, findings, units } = await readMasters({ bytes, name, files: access }, kernel, {
    cache,
    progress: (step) => {
      if (!isLatest()) throw new Outdated();
      send({ kind: 'step', edit, ...step });
    },
  });
  await yieldToEvents();
  if (!isLatest()) return;
  if (!plan || !masters) {
    send({ kind: 'unread', edit, findings, units });
    return;
  }
  lastBuild = { kind: 'build', edit, planBytes: bytes, plan, masters, findings };
  // With a flat parting surface all else is placed as it will be, at once; the true surface is the build worker's to find.
  const { mold } = placeMold({ ...plan, parting: { ...plan.parting, surface: 'flat' } }, masters, [], {
    cache,
  });
  showMasters(edit, mold, kernel);
  laid = { edit, mold };
  send({ kind: 'laid', edit, mold: withoutMeshes(mold), complete: true });
  showChannels(edit, mold);
  if (wanted?.edit === edit) near(wanted, kernel);
  wanted = undefined;
  // What is looked at comes first, and the build worker leaves the machine to it until then.
  buildWorker?.postMessage(lastBuild);
  await warmUp(edit, mold, kernel);
}

/** Before anything is dragged: reduced masters, and warming up, which is wanted but once. */
async function warmUp(edit: number, mold: Mold, kernel: Kernel): Promise<void> {
  for (const master of mold.masters) {
    await yieldToEvents();
    if (edit !== opened) return;
    roughMold({ ...mold, masters: [master] }, kernel);
  }
  for (const dragged of warmUpMoves(mold)) {
    await yieldToEvents();
    if (edit !== opened || isWarm) return;
    checkNear(withDragged(roughMold(mold, kernel), dragged), dragged.id, kernel, fixtures);
  }
  isWarm = true;
}

/** The disc first, and the masters as they are loaded. */
async function showSoon(
  edit: number,
  plan: Plan | undefined,
  access: FileAccess,
  kernel: Kernel,
): Promise<void> {
  if (!plan) return;
  const first = showDisc(edit, plan, kernel);
  const loading = loadTogether(plan, {
    edit,
    files: access,
    cache,
    helper,
    kernel,
    first,
    isLatest: () => edit === latest,
    shown: (id, mesh) => shown.set(id, mesh),
  });
  await Promise.all([first, loading]);
}

/** The disc with all but its masters, which take longer to read. */
async function showDisc(edit: number, plan: Plan, kernel: Kernel): Promise<void> {
  const {
    masters: _,
    placements: _placements,
    supports: _supports,
    gates: _gates,
    vents: _vents,
    ...bare
  } = plan;
  const { mold } = placeMold(bare, [], []);
  send({ kind: 'laid', edit, mold: withoutMeshes(mold), complete: false });
  showSolids(edit, await sketchSolids(mold, kernel, { only: quick, cache }), kernel, false);
}

/**
 * Exact where nothing is dragged; on reduced masters, and so in time with the hand, where something is. Asked about an
 * edit that is still to be laid out, it is answered as soon as that is.
 */
function near(asked: AskNear, kernel: Kernel): void {
  const { edit, ask, id, dragged } = asked;
  if (laid?.edit !== edit) {
    wanted = asked;
    return;
  }
  if (dragged) isWarm = true;
  const start = performance.now();
  const mold = dragged ? withDragged(roughMold(laid.mold, kernel), dragged) : laid.mold;
  const found = checkNear(mold, id, kernel, fixtures);
  send({
    kind: 'near',
    edit,
    ask,
    id,
    error: dragged ? roughError : 0,
    took: performance.now() - start,
    ...found,
  });
}

/** Sends each master's mesh once for as long as it stays the same. */
function showMasters(edit: number, { masters, placements }: Mold, kernel: Kernel): void {
  const most = mostTriangles(placements.length);
  for (const { id, mesh } of masters as readonly Master[]) {
    if (shown.get(id) === mesh) continue;
    shown.set(id, mesh);
    const reduced = shownMesh(mesh, most, kernel);
    send({ kind: 'master', edit, master: { id, mesh: reduced } }, [reduced]);
  }
}

function withoutMeshes({ parting: _, masters, ...mold }: Mold): ShownMold {
  return { ...mold, masters: masters.map(({ mesh: _mesh, ...master }) => master) };
}
