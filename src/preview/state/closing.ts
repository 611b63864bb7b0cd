import { computed, signal } from '@preact/signals';
import { Matrix4 } from 'three';
import type { FigureName, Series } from '../../findings/index.ts';
import { mold, report } from './store.ts';
import { apart, wrongTurn } from './view.ts';

// What closing the halves shows: figures come from the report's series and figures; only where things stand in the
// picture is worked out here.

/** Way the upper half is lifted when wholly apart, as a share of the disc's radius. */
const lift = 0.7;

/** Height of the upper half over closed, mm. */
export const liftOf = (share: number, radius: number): number => share * lift * radius;

export const height = computed(() => liftOf(apart.value, mold.value?.disc.radius ?? 0));

export const figure = (name: FigureName): number | undefined =>
  report.value?.figures.find((one) => one.name === name && one.subject === 'mold')?.value;

export const misfit = computed<Series | undefined>(() =>
  report.value?.series.find(({ name }) => name === 'registration.misfit'),
);

/** Turns at which the halves sit wrongly, nearest fit first, degrees. */
export const falseSeats = computed<readonly number[]>(
  () => report.value?.series.find(({ name }) => name === 'registration.seats')?.x.values ?? [],
);

/** A boss at the present turn and height. */
export interface Seating {
  readonly id: string;
  /** Distance from the socket it is given, mm, from the report at the nearest whole degree. */
  readonly off: number;
  /** How far its head reaches into the upper half as it stands now, mm; 0 while it is clear of it. */
  readonly reach: number;
  readonly is: 'clear' | 'in its socket' | 'clash';
}

/** Off by no more than this, mm, a head is at its socket: the flex or clearance of the plan, at least a tenth. */
const least = 0.1;

export const seatings = computed<readonly Seating[]>(() => {
  const now = mold.value;
  if (!now) return [];
  const degree = Math.round(wrongTurn.value) % 360;
  return now.bosses.map(({ id, headHeight, clearance }) => {
    const series = report.value?.series.find(
      ({ name, subject }) => name === 'registration.off' && subject === id,
    );
    const off = series?.y.values[degree] ?? 0;
    const reach = Math.max(0, headHeight - height.value);
    const fits = off <= Math.max(least, clearance, now.flex ?? 0);
    return { id, off, reach, is: reach === 0 ? 'clear' : fits ? 'in its socket' : 'clash' };
  });
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
