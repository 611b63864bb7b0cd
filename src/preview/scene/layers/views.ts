import { effect } from '@preact/signals';
import { Vector3 } from 'three';
import { flyTo, masterMeshes, mold, solids } from '../../state/store.ts';
import { askedView, pose } from '../../state/view.ts';
import type { Stage } from '../stage.ts';

/** Goes to the named views, and to places the person asked to see. */
export function views(stage: Stage): () => void {
  let shownTitle: string | undefined;
  let shownCount = 0;
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
      stage.fit(pose.peek() === 'open book' ? 'from above' : name === 'fit' ? undefined : name);
    }),
    effect(() => {
      stage.fit(pose.value === 'open book' ? 'from above' : 'over the shoulder');
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
