import { batch } from '@preact/signals';
import { Bench } from '../worker/bench.ts';
import { hear } from './hear.ts';
import * as store from './store.ts';
import { look } from './view.ts';

let bench: Bench | undefined;
/** Started with the first plan: a page that only offers presets needs no kernel. */
const theBench = (): Bench => {
  bench ??= new Bench(hear);
  return bench;
};

/** Opens a plan in place of the one before: nothing of that one stays. */
export function openPlan(plan: store.OpenedPlan): void {
  batch(() => {
    store.plan.value = plan;
    store.changed.value = false;
    store.mold.value = undefined;
    store.solids.value = [];
    store.report.value = undefined;
    store.picked.value = undefined;
    store.unread.value = [];
    store.fault.value = undefined;
  });
  work(true);
  look('over the shoulder');
}

/** Puts a changed text in the open plan's place: what is shown stays until the new is there. */
export function changePlan(text: string): void {
  const plan = store.plan.peek();
  if (!plan || plan.text === text) return;
  store.plan.value = { ...plan, text };
  store.changed.value = true;
  work();
}

/** The file changed on disk: what it now says takes the open text's place. */
export function replacePlan(text: string, hash: string): void {
  const plan = store.plan.peek();
  if (!plan) return;
  store.plan.value = { ...plan, text, hash };
  store.changed.value = false;
  work();
}

/** A file the plan names or will name; the plan is read again if there is one. */
export function keepFile(name: string, bytes: Uint8Array): void {
  theBench().keep({ name, bytes });
  if (store.plan.peek()) work();
}

export function cancelWork(): void {
  theBench().cancel();
  store.step.value = undefined;
}

export const takeAll = (): void => theBench().take();

function work(fresh = false): void {
  const plan = store.plan.peek();
  if (!plan) return;
  store.solidsAreCurrent.value = false;
  store.reportIsCurrent.value = false;
  store.step.value = { title: 'reading the plan', done: 0, total: 1 };
  theBench().open({
    text: plan.text,
    name: plan.name,
    fresh,
    ...(plan.filesAt !== undefined && { filesAt: plan.filesAt }),
  });
}
