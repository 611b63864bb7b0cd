import { effect } from '@preact/signals';
import { Vector3 } from 'three';
import { mold } from '../../state/store.ts';
import { pose } from '../../state/view.ts';
import type { ShownMold } from '../../worker/messages.ts';
import type { Stage } from '../stage.ts';

interface Word {
  readonly says: string;
  readonly side: 'lower' | 'upper';
  readonly at: readonly [number, number, number];
  readonly isFace: boolean;
}

/** Room between the rim and the name of a face, as a share of the radius. */
const aside = 1.1;

/** Numbers as in the list of masters, names of bosses, and which face is which, on both faces of the open book. */
function wordsOf({ disc, placements, bosses }: ShownMold): Word[] {
  return (['lower', 'upper'] as const).flatMap((side) => {
    const onSide = (says: string, x: number, y: number): Word => ({
      says,
      side,
      at: [x, y, 0],
      isFace: false,
    });
    const face: Word = {
      says: side === 'lower' ? 'Lower half, parting face' : 'Upper half, turned over',
      side,
      at: [0, disc.radius * aside, 0],
      isFace: true,
    };
    return [
      face,
      ...placements.map(({ x, y }, index) => onSide(String(index + 1), x, y)),
      ...bosses.map(({ size, x, y }) => onSide(size, x, y)),
    ];
  });
}

/** Words over the open book, moved along with the picture. */
export function names(stage: Stage): () => void {
  let placed: { readonly word: Word; readonly element: HTMLElement }[] = [];
  const place = () => {
    const { clientWidth: width, clientHeight: height } = stage.overlay;
    const at = new Vector3();
    for (const { word, element } of placed) {
      at.set(...word.at)
        .applyMatrix4(stage.sides[word.side].matrixWorld)
        .project(stage.camera);
      const [x, y] = [((at.x + 1) / 2) * width, ((1 - at.y) / 2) * height];
      element.style.transform = `translate(-50%, -50%) translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
    }
  };
  stage.afterDraw.add(place);
  const stop = effect(() => {
    for (const { element } of placed) element.remove();
    const now = mold.value;
    const words = now && pose.value === 'open book' ? wordsOf(now) : [];
    placed = words.map((word) => {
      const element = document.createElement('span');
      element.className = word.isFace ? 'word is-face' : 'word';
      element.textContent = word.says;
      stage.overlay.append(element);
      return { word, element };
    });
    stage.draw();
  });
  return () => {
    stop();
    stage.afterDraw.delete(place);
    for (const { element } of placed) element.remove();
  };
}
