import { effect } from '@preact/signals';
import { Mesh, MeshStandardMaterial } from 'three';
import { seatings } from '../../state/closing.ts';
import { mold, picked, pointedAt, solids } from '../../state/store.ts';
import type { Stage } from '../stage.ts';

/** Bosses light up in their sockets, and glow red where they clash. */
export function seats(stage: Stage): () => void {
  return effect(() => {
    void [solids.value, mold.value, pointedAt.value, picked.value];
    const now = new Map(seatings.value.map((one) => [one.id, one]));
    stage.scene.traverse((object) => {
      if (!(object instanceof Mesh) || object.userData.kind !== 'boss') return;
      const { material } = object;
      const seat = now.get(object.userData.subject);
      if (!(material instanceof MeshStandardMaterial) || !seat) return;
      if (seat.is === 'in its socket') material.emissive.set('#c98a00');
      else if (seat.is === 'clash') material.emissive.set('#c01c10');
    });
    stage.draw();
  });
}
