import { effect } from '@preact/signals';
import { Group } from 'three';
import { identity } from '../../../geometry/index.ts';
import { channels as shown } from '../../state/store.ts';
import { kindOf } from '../kinds.ts';
import { emptyGroup, type Stage } from '../stage.ts';
import { geometryOf, thing } from '../thing.ts';

/** Gates and vents as they are cut, each with the half it is cut in. */
export function channels(stage: Stage): () => void {
  const groups = { lower: new Group(), upper: new Group() };
  stage.sides.lower.add(groups.lower);
  stage.sides.upper.add(groups.upper);
  const stop = effect(() => {
    emptyGroup(groups.lower);
    emptyGroup(groups.upper);
    for (const { id, half, mesh } of shown.value) {
      groups[half].add(thing(geometryOf(mesh), kindOf('channel'), id, identity));
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
