import { effect } from '@preact/signals';
import { Vector3 } from 'three';
import { flyTo, masterMeshes, mold, solids } from '../../state/store.ts';
import { askedView, pose } from '../../state/view.ts';
import type { Stage } from '../stage.ts';

/** The open book is fitted with room for the names of its faces. */
const bookRoom = 1.2;

/** Goes to the named views, and to places the person asked to see. */
export function views(stage: Stage): () => void {
  let shownTitle: string | undefined;
  let shownCount = 0;
  const fitBook = () => stage.fit('from above', bookRoom);
  const stops = [
    effect(() => {
      const { name } = askedView.value;
      stage.fit(name === 'fit' ? undefined : name);
    }),
    // New things are shown whole, unless the person is looking at something.
    effect(() => {
      const count = solids.value.length + masterMeshes.value.size;
      const title = mold.value?.title;
      if (count === 0 || (title === shownTitle && (stage.isMoved || count === shownCount))) return;
      shownTitle = title;
      shownCount = count;
      const { name } = askedView.peek();
      if (pose.peek() === 'open book') fitBook();
      else stage.fit(name === 'fit' ? undefined : name);
    }),
    effect(() => {
      if (pose.value === 'open book') fitBook();
      else stage.fit('over the shoulder');
    }),
    effect(() => {
      const place = flyTo.value;
      if (place) stage.flyTo(new Vector3(...place).applyMatrix4(stage.sides.lower.matrix));
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}
