import { effect } from '@preact/signals';
import { Vector3 } from 'three';
import { flyTo, masterMeshes, mold, solids } from '../../state/store.ts';
import { askedView, pose } from '../../state/view.ts';
import type { Stage } from '../stage.ts';

/** Goes to the named views, and to places the person asked to see. */
export function views(stage: Stage): () => void {
  let shownTitle: string | undefined;
  const stops = [
    effect(() => {
      const { name } = askedView.value;
      stage.fit(name === 'fit' ? undefined : name);
    }),
    // A mold that was not there before is shown whole.
    effect(() => {
      const title = mold.value?.title;
      const some = solids.value.length > 0 || masterMeshes.value.size > 0;
      if (!some || title === undefined || title === shownTitle) return;
      shownTitle = title;
      const { name } = askedView.peek();
      stage.fit(name === 'fit' ? undefined : name);
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
