import { effect } from '@preact/signals';
import { DoubleSide, FrontSide, Mesh, MeshStandardMaterial } from 'three';
import { seatings } from '../../state/closing.ts';
import { masterMeshes, mold, picked, pointedAt, solids } from '../../state/store.ts';
import { hidden, seeThrough } from '../../state/view.ts';
import { kindOf } from '../kinds.ts';
import type { Stage } from '../stage.ts';

const halves = new Set(['lower half', 'upper half', 'blank']);

/** What is shown, what is seen through, and what stands out because it is pointed at or picked. */
export function looks(stage: Stage): () => void {
  return effect(() => {
    // Read so that new things get their looks too.
    void [solids.value, mold.value, masterMeshes.value, seatings.value];
    const away = hidden.value;
    const through = seeThrough.value;
    const near = new Set([pointedAt.value, picked.value]);
    stage.scene.traverse((object) => {
      if (!(object instanceof Mesh) || typeof object.userData.kind !== 'string') return;
      const kind = object.userData.kind;
      const { material } = object;
      if (!(material instanceof MeshStandardMaterial)) return;
      object.visible = !away.has(kind);
      material.color.set(kindOf(kind).color);
      const glass = through && halves.has(kind);
      material.transparent = glass;
      material.opacity = glass ? 0.22 : 1;
      material.depthWrite = !glass;
      material.side = glass ? DoubleSide : FrontSide;
      material.emissive.set(near.has(object.userData.subject) ? '#7a4a10' : '#000000');
      material.needsUpdate = true;
    });
    stage.draw();
  });
}
