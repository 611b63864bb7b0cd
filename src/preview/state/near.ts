import { effect, signal } from '@preact/signals';
import type { Bench } from '../worker/bench.ts';
import type { FromWorker, Held } from '../worker/messages.ts';
import { held, poseOf } from './held.ts';
import { mold, picked } from './store.ts';

/** Walls and covers of the picked thing, as they are found while it is moved and, exactly, when it rests. */
export type NearFigures = Extract<FromWorker, { kind: 'near' }>;

export const near = signal<NearFigures | undefined>(undefined);
/** Name of the measure from the hand's move to its figures, for whoever watches. */
const updated = 'hand to figures';

let asked = 0;
/** Asked about an edit before it was laid out: its layout then need not be asked about again. */
let isAhead = false;
let waiting = false;
let askedAt = 0;

/** What an answer brings: it is shown, and if the hand has moved on meanwhile, the next is asked for. */
export function hearNear(message: NearFigures): void {
  if (message.ask !== asked) return;
  waiting = false;
  near.value = message;
  if (message.error > 0) {
    performance.clearMeasures(updated);
    performance.measure(updated, { start: askedAt, detail: message.took });
  } else performance.mark('near exact');
  again?.();
}

/** Asks for the exact figures of the picked thing as the plan now being read has it. */
export function askAhead(bench: Bench): void {
  const id = picked.peek();
  if (id === undefined || poseOf(id) === undefined) return;
  isAhead = true;
  bench.near(++asked, id);
}

let again: (() => void) | undefined;

/** Keeps the figures of the picked thing up with the hand: one question at a time, always about the latest place. */
export function followHand(bench: () => Bench): () => void {
  let sent: Held | undefined;
  let askedOf: unknown;
  let seen: unknown;
  const ask = () => {
    const id = picked.peek();
    const now = held.peek();
    again = undefined;
    if (id === undefined || !mold.peek() || poseOf(id) === undefined) {
      near.value = undefined;
      return;
    }
    sent = now;
    waiting = true;
    askedOf = mold.peek();
    askedAt = performance.now();
    bench().near(++asked, id, now);
  };
  return effect(() => {
    // A new mold answers nothing that was asked about the one before.
    const now = { mold: mold.value, id: picked.value, held: held.value };
    const isAnswered = isAhead && now.mold !== seen && !now.held;
    if (now.mold !== seen) isAhead = false;
    seen = now.mold;
    if (isAnswered && now.id === near.peek()?.id) return;
    const isDue = !waiting || now.mold !== askedOf || !now.held;
    if (isDue) ask();
    else if (now.held !== sent) again = ask;
  });
}
