import { effect } from '@preact/signals';
import { length } from '../../state/show.ts';
import { lightNow, openPanel } from '../../state/view.ts';
import { dimensioned, type MeasuredWall, measuredWalls, middleOf } from '../../state/walls.ts';
import { Overlay } from '../overlay.ts';
import type { Stage } from '../stage.ts';
import { styleColor } from '../text-label.ts';

/** Half of the ticks at the ends of a dimension line, mm. */
const tick = 1.2;

/** The thinnest walls as dimension lines with their numbers, while the sheet on walls is open. */
export function dimensions(stage: Stage): () => void {
  const overlay = new Overlay(stage, 'lower');
  const stop = effect(() => {
    overlay.clear();
    void lightNow.value;
    if (openPanel.value === 'walls') {
      // Thickest first, so that the thinnest comes before the others.
      for (const { ends, thickness, isThin } of measuredWalls.value.slice(0, dimensioned).reverse()) {
        const ink = styleColor(isThin ? '--stop' : '--ink');
        overlay.lines([...ends, ...upright(ends[0]), ...upright(ends[1])], ink, 2.5);
        overlay.word(length(thickness), middleOf(ends), ink);
      }
    }
    stage.draw();
  });
  return () => {
    stop();
    overlay.remove();
  };
}

const upright = ([x, y, z]: MeasuredWall['ends'][0]): MeasuredWall['ends'] => [
  [x, y, z - tick],
  [x, y, z + tick],
];
