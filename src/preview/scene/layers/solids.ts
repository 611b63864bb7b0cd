import { effect } from '@preact/signals';
import { Group } from 'three';
import { compose, rotation, translation } from '../../../geometry/index.ts';
import { kindOfRole } from '../../../kinds/index.ts';
import { mold, solids as solidsSignal } from '../../state/store.ts';
import type { ShownMold, ShownSolid } from '../../worker/messages.ts';
import { kindOfSolid, type Side, sideOfSolid } from '../kinds.ts';
import { emptyGroup, type Stage } from '../stage.ts';
import { geometryOf, thing } from '../thing.ts';

const sides: readonly Side[] = ['lower', 'upper', 'loose'];

/** The solids as they stand in the mold. A blank is not shown where its half is there. */
export function solids(stage: Stage): () => void {
  const groups = new Map(sides.map((side) => [side, new Group()]));
  for (const [side, group] of groups) stage.sides[side].add(group);
  const stop = effect(() => {
    for (const group of groups.values()) emptyGroup(group);
    const list = solidsSignal.value;
    // Read whatever the list holds: what is drawn anew must come before the layers that give it its looks.
    const bosses = mold.value?.bosses ?? [];
    const hasHalves = list.some(({ role }) => role === 'half');
    for (const solid of list) {
      const kind = kindOfSolid(solid);
      const geometry = geometryOf(solid.mesh);
      for (const { subject, matrix } of placesOf(solid, bosses)) {
        const mesh = thing(geometry, kind, subject, matrix);
        // Until the halves are made, the blanks stand for them.
        if (solid.role === 'blank' && !hasHalves) mesh.userData.kind = standsFor(solid.id);
        groups.get(sideOfSolid(solid))?.add(mesh);
      }
    }
    stage.draw();
  });
  return () => {
    stop();
    for (const [side, group] of groups) {
      emptyGroup(group);
      stage.sides[side].remove(group);
    }
  };
}

/** Where a solid stands: as often as it is used, or in its one place. */
function placesOf({ id, role, subjects, toMold }: ShownSolid, bosses: ShownMold['bosses']) {
  if (!kindOfRole(role).atBosses) return [{ subject: id, matrix: toMold }];
  const used = bosses.filter((boss) => subjects.includes(boss.id));
  return used.map(({ id, x, y, turnRad }) => ({
    subject: id,
    matrix: compose(translation(x, y, 0), rotation('z', turnRad), toMold),
  }));
}

const standsFor = (id: string): string => (id.startsWith('upper') ? 'upper half' : 'lower half');
