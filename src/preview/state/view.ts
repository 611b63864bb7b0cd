import { computed, signal } from '@preact/signals';
import type { UnitSystem } from '../../findings/index.ts';
import { hiddenAtFirst } from '../scene/kinds.ts';
import type { ShownMold } from '../worker/messages.ts';
import { persisted } from './persist.ts';

// How the mold is looked at: nothing here changes the plan.

/** The system the plan is written in, which is shown until the person chooses. */
export const planSystem = signal<UnitSystem>('metric');

/** A unit the person chose, or the one of the two that the plan is written in. */
function followed<T extends string>(name: string, metric: T, inch: T): { value: T } {
  const asked = persisted<T | 'as the plan'>(name, 'as the plan', ['as the plan', metric, inch]);
  return {
    get value() {
      if (asked.value !== 'as the plan') return asked.value;
      return planSystem.value === 'metric' ? metric : inch;
    },
    set value(wanted) {
      asked.value = wanted;
    },
  };
}

export const units = followed<'mm' | 'in'>('units', 'mm', 'in');
export const warmth = followed<'C' | 'F'>('warmth', 'C', 'F');
/** The system findings are said in. */
export const systemNow = (): UnitSystem => (units.value === 'mm' ? 'metric' : 'inch');
export const light = persisted('light', 'as the system', ['as the system', 'light', 'dark'] as const);
/** What the system asks for; the page keeps it true. */
export const systemLight = signal<'light' | 'dark'>('light');
export const lightNow = computed(() => (light.value === 'as the system' ? systemLight.value : light.value));

/** Kinds of things that are not shown; see scene/kinds.ts. */
export const hidden = signal<ReadonlySet<string>>(new Set(hiddenAtFirst));

/** Before the first look at a plan: where plates are poured on, the plates are what is made. */
export function hideForFirstLook(process: ShownMold['process']): void {
  const poured = ['lower half', 'upper half', 'master', 'channel', 'sprue form'];
  hidden.value = new Set(process === 'poured' ? [...hiddenAtFirst, ...poured] : hiddenAtFirst);
}
export const seeThrough = signal(false);

/** `stacked`: the halves over one another, `apart` mm of air between. `open book`: both faces up, side by side. */
export const pose = signal<'stacked' | 'open book'>('stacked');
/** Share of the way apart, 0 closed to 1. */
export const apart = signal(1);
/** By how much the upper half is turned against the lower one, degrees. */
export const wrongTurn = signal(0);

export interface Cut {
  /** Direction the plane faces: an axis of the mold. */
  readonly axis: 'x' | 'y' | 'z';
  /** Distance of the plane from the middle along it, mm. */
  readonly at: number;
}

export const cut = signal<Cut | undefined>(undefined);

/** Named standard views; the scene listens. The number makes the same one anew when asked for again. */
export const viewNames = ['from above', 'from below', 'from the side', 'over the shoulder'] as const;
export type ViewName = (typeof viewNames)[number];
export const askedView = signal<{ readonly name: ViewName | 'fit'; readonly times: number }>({
  name: 'over the shoulder',
  times: 0,
});
export const setView = (name: ViewName | 'fit'): void => {
  askedView.value = { name, times: askedView.peek().times + 1 };
};

/** The bench step whose panel is open. */
export const openPanel = signal('layout');
