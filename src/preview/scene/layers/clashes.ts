import { effect } from '@preact/signals';
import { seatings } from '../../state/closing.ts';
import { length } from '../../state/show.ts';
import { mold } from '../../state/store.ts';
import { lightNow, openPanel } from '../../state/view.ts';
import { Overlay } from '../overlay.ts';
import type { Stage } from '../stage.ts';
import { styleColor } from '../text-label.ts';

/** How deep each boss runs into the upper half, over the boss, while the sheet on closing is open. */
export function clashes(stage: Stage): () => void {
  const overlay = new Overlay(stage, 'lower');
  const stop = effect(() => {
    overlay.clear();
    void lightNow.value;
    const bosses = new Map((mold.value?.bosses ?? []).map((boss) => [boss.id, boss]));
    for (const { id, state, clash } of openPanel.value === 'register' ? seatings.value : []) {
      const boss = bosses.get(id);
      if (state !== 'clash' || !boss) continue;
      overlay.word(length(clash), [boss.x, boss.y, boss.headHeight], styleColor('--stop'));
    }
    stage.draw();
  });
  return () => {
    stop();
    overlay.remove();
  };
}
