import { computed, signal } from '@preact/signals';
import { type OpenedPlan, plan } from './store.ts';

/** Plans as they were, the latest last, and those gone back from, the next last. Whole: a plan may be another file. */
const past = signal<readonly OpenedPlan[]>([]);
const ahead = signal<readonly OpenedPlan[]>([]);

/** Most steps kept: texts are small. */
const most = 500;

export const canUndo = computed(() => past.value.length > 0);
export const canRedo = computed(() => ahead.value.length > 0);

/** Remembers the plan as it is now, before it is changed. */
export function record(): void {
  const now = plan.peek();
  if (!now) return;
  past.value = [...past.peek(), now].slice(-most);
  ahead.value = [];
}

/** The plan one step back, which the present one can then be gone forward to again. */
export const stepBack = (): OpenedPlan | undefined => step(past, ahead);
export const stepForward = (): OpenedPlan | undefined => step(ahead, past);

function step(from: typeof past, to: typeof past): OpenedPlan | undefined {
  const target = from.peek().at(-1);
  const now = plan.peek();
  if (!target || !now) return undefined;
  from.value = from.peek().slice(0, -1);
  to.value = [...to.peek(), now];
  return target;
}
