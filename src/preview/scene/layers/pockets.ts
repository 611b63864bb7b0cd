import { effect } from '@preact/signals';
import { amountOf, likeCavities, shownOf } from '../../state/filling.ts';
import { reportIsCurrent } from '../../state/store.ts';
import { lightNow, openPanel } from '../../state/view.ts';
import { Overlay } from '../overlay.ts';
import type { Stage } from '../stage.ts';
import { styleColor } from '../text-label.ts';

/** So many pockets of each sort of cavity have their volume written beside them. */
const named = 1;

/** Where air stays, while the sheet on filling is open: marks in all cavities, and words at one of each sort. */
export function pockets(stage: Stage): () => void {
  const overlay = new Overlay(stage, 'lower');
  const stop = effect(() => {
    overlay.clear();
    void lightNow.value;
    for (const like of openPanel.value === 'filling' ? likeCavities.value : []) {
      for (const pocket of [...like.pockets.values()].flat()) overlay.pocket(pocket, pocket.place);
      for (const pocket of shownOf(like).pockets.slice(0, named)) {
        const ink = styleColor(reportIsCurrent.value ? '--ink' : '--soft');
        overlay.word(amountOf(pocket), pocket.place, ink);
      }
    }
    stage.draw();
  });
  return () => {
    stop();
    overlay.remove();
  };
}
