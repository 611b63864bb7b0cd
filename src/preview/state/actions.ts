import { batch } from '@preact/signals';
import { WorkerClient } from '../worker/worker-client.ts';
import { held, isProposing, proposed, tried } from './channel-state.ts';
import { dragState } from './drag-state.ts';
import { record, stepBack, stepForward } from './history.ts';
import { askAhead, followDrag } from './near.ts';
import { receive } from './receive.ts';
import * as store from './store.ts';
import { setView } from './view.ts';

let started: WorkerClient | undefined;
/** Started with the first plan: a page that only offers presets needs no kernel. */
const workerClient = (): WorkerClient => {
  if (!started) {
    started = new WorkerClient(receive);
    followDrag(workerClient);
  }
  return started;
};

/** Opens a plan in place of the one before: nothing of that one stays, but it can be gone back to. */
export function openPlan(plan: Omit<store.OpenedPlan, 'kept'>): void {
  record();
  showAnew({ ...plan, kept: plan.text });
}

function showAnew(plan: store.OpenedPlan): void {
  batch(() => {
    store.plan.value = plan;
    store.mold.value = undefined;
    store.channels.value = [];
    store.solids.value = [];
    store.report.value = undefined;
    store.filling.value = undefined;
    held.value = undefined;
    tried.value = undefined;
    store.picked.value = undefined;
    store.unread.value = [];
    store.fault.value = undefined;
  });
  recompute(true);
  setView('over the shoulder');
}

/** Puts a changed text in the open plan's place: what is shown stays until the new is there. */
export function changePlan(text: string): void {
  const plan = store.plan.peek();
  if (!plan || plan.text === text) return;
  record();
  store.plan.value = { ...plan, text };
  recompute();
}

export const undo = (): void => goTo(stepBack());
export const redo = (): void => goTo(stepForward());

/** Goes to a plan as it was. Of the same file, what lies on disk is still what it is now. */
function goTo(plan: store.OpenedPlan | undefined): void {
  if (!plan) return;
  dragState.value = undefined;
  held.value = undefined;
  tried.value = undefined;
  proposed.value = undefined;
  const now = store.plan.peek();
  if (now?.name !== plan.name || now.origin !== plan.origin || now.filesAt !== plan.filesAt) {
    showAnew(plan);
    return;
  }
  store.plan.value = { ...now, text: plan.text };
  recompute();
}

/** What lies on disk is known to be this; the open text stays, or it is taken over from there. */
export function onDisk(kept: string, hash: string | undefined, text: string): void {
  const plan = store.plan.peek();
  if (!plan) return;
  const isNew = plan.text !== text;
  if (isNew) record();
  store.plan.value = { ...plan, text, kept, ...(hash !== undefined && { hash }) };
  // A file the plan names may have changed where the plan did not.
  workerClient().forget();
  recompute();
}

/** What is open was saved: nothing to be computed anew. */
export function wasSaved(kept: string, hash?: string): void {
  const plan = store.plan.peek();
  if (plan) store.plan.value = { ...plan, kept, ...(hash !== undefined && { hash }) };
}

/** A file the plan names or will name; the plan is read again if there is one. */
export function keepFile(name: string, bytes: Uint8Array): void {
  workerClient().keep({ name, bytes });
}

/** Reads the plan again, such as after files came. */
export function readAgain(): void {
  recompute();
}

export function cancelBuild(): void {
  workerClient().cancel();
  isProposing.value = false;
  store.step.value = undefined;
}

/** Asks for files of these formats, or of all; of them one alone where it is named. */
export const requestFiles = (formats?: readonly string[], file?: string): void =>
  workerClient().request({
    kind: 'files',
    ...(formats !== undefined && { formats }),
    ...(file !== undefined && { file }),
  });

export const requestFilling = (): void => workerClient().request({ kind: 'filling' });

export const requestTold = (): void => workerClient().request({ kind: 'told' });

export function requestProposal(only?: string): void {
  proposed.value = undefined;
  isProposing.value = true;
  workerClient().request({ kind: 'propose', ...(only !== undefined && { only }) });
}

export const tryChannel = (wanted: Parameters<WorkerClient['tryChannel']>[0]): void =>
  workerClient().tryChannel(wanted);

export const requestWalls = (): void => workerClient().request({ kind: 'walls' });

function recompute(fresh = false): void {
  const plan = store.plan.peek();
  if (!plan) return;
  store.solidsAreCurrent.value = false;
  store.reportIsCurrent.value = false;
  store.walls.value = undefined;
  store.fillingIsCurrent.value = false;
  store.forecasts.value = undefined;
  isProposing.value = false;
  store.step.value = { title: 'reading the plan', done: 0, total: 1 };
  workerClient().open({
    text: plan.text,
    name: plan.name,
    fresh,
    ...(plan.filesAt !== undefined && { filesAt: plan.filesAt }),
  });
  if (!fresh) askAhead(workerClient());
}
