import { computed, signal } from '@preact/signals';
import { Matrix4 } from 'three';
import type { FigureName, Series } from '../../findings/index.ts';
import { toRadians } from '../../geometry/index.ts';
import { type BossSeat, pegsOf, seatsAt, slackIn } from '../../mold/index.ts';
import { Pattern } from '../../physics/index.ts';
import { mold, report } from './store.ts';
import { apart, wrongTurn } from './view.ts';

// What closing the halves shows: figures come from the report; how the bosses sit at the present turn and height is
// asked of the same functions as the check's.

/** Way the upper half is lifted when wholly apart, as a share of the disc's radius. */
const lift = 0.7;

/** Height of the upper half over closed, mm. */
export const liftOf = (share: number, radius: number): number => share * lift * radius;

const height = computed(() => liftOf(apart.value, mold.value?.disc.radius ?? 0));

export const figure = (name: FigureName): number | undefined =>
  report.value?.figures.find((one) => one.name === name && one.subject === 'mold')?.value;

export const misfit = computed<Series | undefined>(() =>
  report.value?.series.find(({ name }) => name === 'registration.misfit'),
);

/** Turns at which the halves sit wrongly, nearest fit first, degrees. */
export const falseSeats = computed<readonly number[]>(
  () => report.value?.series.find(({ name }) => name === 'registration.seats')?.x.values ?? [],
);

/** Made once for each mold: the bosses do not change with how the halves stand. */
const pattern = computed(() => {
  const now = mold.value;
  return now && now.bosses.length > 1 ? new Pattern(pegsOf(now), slackIn(now)) : undefined;
});

/** Each boss as the upper half stands now. */
export const seatings = computed<readonly BossSeat[]>(() => {
  const now = mold.value;
  if (!now || !pattern.value) return [];
  return seatsAt(now, pattern.value, toRadians(wrongTurn.value), height.value);
});

/** The upper half at one end of its play, drawn larger than it is. */
export interface Shaking {
  readonly factor: number;
  readonly shift: number;
}

/** How far play is to be seen, mm in the picture. */
const shownShift = 2.5;
const factors = [1, 2, 5, 10, 20, 50, 100];

/** Which way it is shaken now: 1 or -1; 0 at rest. */
export const shakeWay = signal<-1 | 0 | 1>(0);

export const shaken = computed<Shaking | undefined>(() => {
  const shift = figure('registration.shift');
  if (shift === undefined || !(shift > 0)) return undefined;
  return { shift, factor: factors.find((one) => one * shift >= shownShift) ?? 100 };
});

export const shaking = computed<Matrix4 | undefined>(() => {
  if (shakeWay.value === 0 || !shaken.value) return undefined;
  const { shift, factor } = shaken.value;
  return new Matrix4().makeTranslation(shakeWay.value * shift * factor, 0, 0);
});
