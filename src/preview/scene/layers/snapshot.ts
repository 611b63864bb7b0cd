import { effect } from '@preact/signals';
import { picturesAsked, takePicture } from '../../state/snapshot.ts';
import type { Stage } from '../stage.ts';
import { styleColor } from '../text-label.ts';

/** Hands over a picture of the view when one is asked for. */
export function snapshot(stage: Stage): () => void {
  let given = picturesAsked.peek();
  return effect(() => {
    if (picturesAsked.value === given) return;
    given = picturesAsked.value;
    // Drawn and read in one go: the browser forgets a drawn picture after it has shown it.
    stage.drawNow();
    void takePicture(stage.canvas, styleColor('--view-high'));
  });
}
