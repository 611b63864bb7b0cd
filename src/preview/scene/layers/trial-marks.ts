import { effect } from '@preact/signals';
import { markPlace, marks } from '../../state/pour-entry.ts';
import { mold } from '../../state/store.ts';
import { lightNow, openPanel, pose } from '../../state/view.ts';
import { onPlane } from '../on-plane.ts';
import { Overlay } from '../overlay.ts';
import type { Stage } from '../stage.ts';
import { styleColor } from '../text-label.ts';

/** How far the pointer may move between down and up and still have pressed, px. */
const still = 5;

/** What is being noted of the castings, while the sheet on trials is open; a press on a cavity notes the fault in hand there. */
export function trialMarks(stage: Stage): () => void {
  const overlay = new Overlay(stage, 'lower');
  const stop = effect(() => {
    overlay.clear();
    void lightNow.value;
    const placements = new Map((mold.value?.placements ?? []).map((one) => [one.id, one]));
    for (const [id, { came, at }] of openPanel.value === 'trials' ? marks.value : []) {
      const one = placements.get(id);
      const place = at ?? (one && ([one.x, one.y] as const));
      if (!place) continue;
      overlay.pocket({ stays: 'all', most: 1 }, [place[0], place[1], 0]);
      overlay.word(came, [place[0], place[1], 0], styleColor('--stop'));
    }
    stage.draw();
  });
  const stopPointer = followPresses(stage);
  return () => {
    stop();
    stopPointer();
    overlay.remove();
  };
}

function followPresses(stage: Stage): () => void {
  const { canvas } = stage;
  let from: { readonly x: number; readonly y: number } | undefined;
  const down = ({ button, clientX: x, clientY: y, isPrimary }: PointerEvent): void => {
    from = openPanel.peek() === 'trials' && button === 0 && isPrimary ? { x, y } : undefined;
  };
  const up = (event: PointerEvent): void => {
    if (!from || Math.hypot(event.clientX - from.x, event.clientY - from.y) > still) return;
    from = undefined;
    for (const side of pose.peek() === 'open book' ? (['lower', 'upper'] as const) : (['lower'] as const)) {
      const at = onPlane(stage, event, side);
      if (at) markPlace(at);
    }
  };
  canvas.addEventListener('pointerdown', down);
  canvas.addEventListener('pointerup', up);
  return () => {
    canvas.removeEventListener('pointerdown', down);
    canvas.removeEventListener('pointerup', up);
  };
}
