import { effect } from '@preact/signals';
import { Euler, Matrix4 } from 'three';
import { toRadians } from '../../../geometry/index.ts';
import { liftOf, shaking } from '../../state/closing.ts';
import { mold } from '../../state/store.ts';
import { apart, pose, wrongTurn } from '../../state/view.ts';
import type { Stage } from '../stage.ts';

/** Gap between the halves of the open book, mm. */
const bookGap = 24;

/** Lowers and turns the upper half, or lays the mold open like a book. */
export function poses(stage: Stage): () => void {
  const { lower, upper, loose } = stage.sides;
  for (const side of [lower, upper, loose]) side.matrixAutoUpdate = false;
  return effect(() => {
    const radius = mold.value?.disc.radius ?? 100;
    if (pose.value === 'open book') {
      const aside = radius + bookGap / 2;
      lower.matrix.makeTranslation(-aside, 0, 0);
      // Turned over about the spine between the two: left and right change places, as they do on the bench.
      upper.matrix.makeRotationFromEuler(new Euler(0, Math.PI, 0)).setPosition(aside, 0, 0);
    } else {
      const height = liftOf(apart.value, radius);
      lower.matrix.identity();
      upper.matrix.copy(shaking.value ?? new Matrix4());
      // The check turns the bosses; the sockets turn the other way.
      upper.matrix.premultiply(new Matrix4().makeRotationZ(toRadians(-wrongTurn.value)));
      upper.matrix.premultiply(new Matrix4().makeTranslation(0, 0, height));
      loose.matrix.makeTranslation(0, 0, height * 1.6);
    }
    // On the bench the sprue form is put away when the mold lies open.
    loose.visible = pose.value !== 'open book';
    for (const side of [lower, upper, loose]) side.matrixWorldNeedsUpdate = true;
    stage.draw();
  });
}
