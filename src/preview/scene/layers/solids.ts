import { effect } from '@preact/signals';
import { Group } from 'three';
import { solids as solidsSignal } from '../../state/store.ts';
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
    const hasHalves = list.some(({ role }) => role === 'half');
    for (const solid of list) {
      const kind = kindOfSolid(solid);
      const mesh = thing(geometryOf(solid.mesh), kind, solid.id, solid.toMold);
      // Until the halves are made, the blanks stand for them.
      if (solid.role === 'blank' && !hasHalves) mesh.userData.kind = standsFor(solid.id);
      groups.get(sideOfSolid(solid))?.add(mesh);
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

const standsFor = (id: string): string => (id.startsWith('upper') ? 'upper half' : 'lower half');
