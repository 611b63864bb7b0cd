import { effect } from '@preact/signals';
import { mold, pointedAt } from '../../state/store.ts';
import { lightNow } from '../../state/view.ts';
import { Overlay } from '../overlay.ts';
import type { Stage } from '../stage.ts';
import { styleColor } from '../text-label.ts';

/** The name of what is pointed at in a row or a drawing, at its place: seen even where a half covers it. */
export function nameTag(stage: Stage): () => void {
  const overlay = new Overlay(stage, 'lower');
  const stop = effect(() => {
    overlay.clear();
    void lightNow.value;
    const id = pointedAt.value;
    const things = [...(mold.value?.placements ?? []), ...(mold.value?.bosses ?? [])];
    const found = things.find((one) => one.id === id);
    if (found) overlay.word(found.id, [found.x, found.y, 0], styleColor('--ink'));
    stage.draw();
  });
  return () => {
    stop();
    overlay.remove();
  };
}
