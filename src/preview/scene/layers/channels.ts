import { effect } from '@preact/signals';
import { BoxGeometry, Group } from 'three';
import { compose, rotation, translation } from '../../../kernel/index.ts';
import { mold } from '../../state/store.ts';
import { kindOf } from '../kinds.ts';
import { emptyGroup, type Stage } from '../stage.ts';
import { thing } from '../thing.ts';

/** Gates and vents as bars along their paths, as wide and deep as they are cut; in the halves they follow the surface. */
export function channels(stage: Stage): () => void {
  const groups = { lower: new Group(), upper: new Group() };
  stage.sides.lower.add(groups.lower);
  stage.sides.upper.add(groups.upper);
  const stop = effect(() => {
    emptyGroup(groups.lower);
    emptyGroup(groups.upper);
    for (const { id, from, to, width, depth, half } of mold.value?.channels ?? []) {
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      const place = compose(
        translation((from[0] + to[0]) / 2, (from[1] + to[1]) / 2, half === 'lower' ? -depth / 2 : depth / 2),
        rotation('z', Math.atan2(dy, dx)),
      );
      const geometry = new BoxGeometry(Math.hypot(dx, dy), width, depth);
      groups[half].add(thing(geometry, kindOf('channel'), id, place));
    }
    stage.draw();
  });
  return () => {
    stop();
    for (const half of ['lower', 'upper'] as const) {
      emptyGroup(groups[half]);
      stage.sides[half].remove(groups[half]);
    }
  };
}
