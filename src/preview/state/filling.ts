import { computed, signal } from '@preact/signals';
import type { Finding } from '../../findings/index.ts';
import type { TriedChannel } from '../worker/messages.ts';
import { tried } from './channel-state.ts';
import { quantity } from './show.ts';
import { filling, findings, flyTo, mold, picked } from './store.ts';

// How the cavities fill: pockets are the report's findings, the order of filling is asked of the build worker.

type Place = readonly [number, number, number];

/** Air that stays in a cavity: under all of the assumptions, or under some. Volumes in mm3, the place in the mold frame. */
export interface ShownPocket {
  /** Id of the placement. */
  readonly subject: string;
  readonly stays: 'all' | 'some';
  readonly least: number;
  readonly most: number;
  readonly place: Place;
  readonly where: string;
  readonly sealed: string;
}

function pocketOf({ code, subject, place, values }: Finding): ShownPocket[] {
  if ((code !== 'fill.air-stays' && code !== 'fill.air-may-stay') || !place) return [];
  const { least, most = least, where, sealed } = values;
  if (typeof least !== 'number' || typeof most !== 'number') return [];
  const stays = code === 'fill.air-stays' ? 'all' : 'some';
  const [x, y, z] = place;
  return [{ subject, stays, least, most, place: [x, y, z], where: String(where), sealed: String(sealed) }];
}

const triedPockets = (trial: TriedChannel | undefined): ShownPocket[] =>
  (trial?.air ?? []).map(({ volumes: [least, most], ...air }) => ({
    subject: trial?.placement ?? '',
    least,
    most,
    ...air,
  }));

/** Cavities that fill alike, and the pockets of each, the largest first. */
export interface LikeCavities {
  /** Ids of the placements. */
  readonly subjects: readonly string[];
  readonly pockets: ReadonlyMap<string, readonly ShownPocket[]>;
}

const byVolume = (a: ShownPocket, b: ShownPocket): number =>
  b.most - a.most || b.least - a.least || (a.stays === 'all' ? -1 : 1);

const airIn = (pockets: readonly ShownPocket[]): number => pockets.reduce((sum, { most }) => sum + most, 0);

/** All cavities with pockets, the worst first. */
export const likeCavities = computed<readonly LikeCavities[]>(() => {
  const bySubject = new Map<string, ShownPocket[]>();
  const trial = tried.value?.air ? tried.value : undefined;
  const others = findings.value.flatMap(pocketOf).filter(({ subject }) => subject !== trial?.placement);
  for (const pocket of [...others, ...triedPockets(trial)])
    bySubject.set(pocket.subject, [...(bySubject.get(pocket.subject) ?? []), pocket]);
  const masters = new Map((mold.value?.placements ?? []).map(({ id, master }) => [id, master]));
  const groups = new Map<string, [string, ShownPocket[]][]>();
  for (const [id, found] of bySubject) {
    const pockets = found.sort(byVolume);
    const amounts = pockets.map(({ stays, least, most }) => [stays, least.toFixed(1), most.toFixed(1)]);
    const key = JSON.stringify([masters.get(id), amounts]);
    groups.set(key, [...(groups.get(key) ?? []), [id, pockets]]);
  }
  return [...groups.values()]
    .sort(([[, a]], [[, b]]) => airIn(b) - airIn(a))
    .map((like) => ({ subjects: like.map(([id]) => id), pockets: new Map(like) }));
});

/** Of like cavities the picked one, else the first. */
export function shownOf({ subjects, pockets }: LikeCavities): {
  readonly subject: string;
  readonly pockets: readonly ShownPocket[];
} {
  const subject = subjects.find((one) => one === picked.value) ?? subjects[0];
  return { subject, pockets: pockets.get(subject) ?? [] };
}

/** How much air, as the person chose; where assumptions differ, from least to most. */
export function amountOf({ stays, least, most }: Pick<ShownPocket, 'stays' | 'least' | 'most'>): string {
  if (stays === 'some') return `up to ${quantity(most, 'mm3')}`;
  const [from, to] = [quantity(least, 'mm3'), quantity(most, 'mm3')];
  return from === to ? to : `${from} to ${to}`;
}

/** What lets the air out: the way it was shut in says what is missing. */
export function freedBy({ where, sealed }: Pick<ShownPocket, 'where' | 'sealed'>): string {
  if (where === 'mouth') return 'a vent under the mouth of its narrow leg';
  if (where === 'leg') return 'a vent at the end of its narrow leg';
  if (sealed === 'gate') return 'a wider gate, or a vent here';
  return 'a vent here, or a gate from where metal comes here last';
}

export function showPocket({ subject, place }: ShownPocket): void {
  picked.value = subject;
  flyTo.value = place;
}

/** The order each cavity fills in: that of what is held comes before what the build found. */
export const shownFillings = computed(() => {
  const trial = tried.value?.filling;
  return (filling.value ?? []).map((one) => (one.subject === trial?.subject ? trial : one));
});

/** Share of its volume that each cavity is filled to in the picture. */
export const filledShare = signal(1);
export const isPlaying = signal(false);

/** Time in which the filling is played, s; and steps where the person wants nothing to move by itself. */
const playedS = 6;
const stillSteps = 10;

const wantsStill = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

let frame = 0;

export function stopPlaying(): void {
  cancelAnimationFrame(frame);
  isPlaying.value = false;
}

/** Plays on, from the start where it is at its end; one step only where nothing is to move by itself. */
export function playOn(): void {
  if (filledShare.peek() >= 1) filledShare.value = 0;
  if (wantsStill()) {
    filledShare.value = Math.min(1, (Math.floor(filledShare.peek() * stillSteps + 1e-9) + 1) / stillSteps);
    return;
  }
  isPlaying.value = true;
  let before = performance.now();
  const on = (now: number): void => {
    filledShare.value = Math.min(1, filledShare.peek() + Math.max(0, now - before) / 1000 / playedS);
    before = now;
    if (filledShare.peek() >= 1) stopPlaying();
    else frame = requestAnimationFrame(on);
  };
  frame = requestAnimationFrame(on);
}
