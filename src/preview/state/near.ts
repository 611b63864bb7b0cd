import { effect, signal } from '@preact/signals';
import type { Dragged, FromWorker } from '../worker/messages.ts';
import type { WorkerClient } from '../worker/worker-client.ts';
import { dragged, poseOf } from './drag-state.ts';
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
export function receiveNear(message: NearFigures): void {
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
export function askAhead(client: WorkerClient): void {
  const id = picked.peek();
  if (id === undefined || poseOf(id) === undefined) return;
  isAhead = true;
  client.near(++asked, id);
}

let again: (() => void) | undefined;

/** Keeps the figures of the picked thing up with the hand: one question at a time, always about the latest place. */
export function followDrag(client: () => WorkerClient): () => void {
  let sent: Dragged | undefined;
  let askedOf: unknown;
  let seen: unknown;
  const ask = () => {
    const id = picked.peek();
    const now = dragged.peek();
    again = undefined;
    if (id === undefined || !mold.peek() || poseOf(id) === undefined) {
      near.value = undefined;
      return;
    }
    sent = now;
    waiting = true;
    askedOf = mold.peek();
    askedAt = performance.now();
    client().near(++asked, id, now);
  };
  return effect(() => {
    // A new mold answers nothing that was asked about the one before.
    const now = { mold: mold.value, id: picked.value, dragged: dragged.value };
    const isAnswered = isAhead && now.mold !== seen && !now.dragged;
    if (now.mold !== seen) isAhead = false;
    seen = now.mold;
    if (isAnswered && now.id === near.peek()?.id) return;
    const isDue = !waiting || now.mold !== askedOf || !now.dragged;
    if (isDue) ask();
    else if (now.dragged !== sent) again = ask;
  });
}
