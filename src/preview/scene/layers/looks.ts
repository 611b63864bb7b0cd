import { effect } from '@preact/signals';
import { DoubleSide, FrontSide, Mesh, MeshStandardMaterial } from 'three';
import type { BossSeat } from '../../../mold/index.ts';
import { seatings } from '../../state/closing.ts';
import { picked, pictured, pointedAt } from '../../state/store.ts';
import { hidden, openPanel, seeThrough } from '../../state/view.ts';
import { halves, kindOf } from '../kinds.ts';
import type { Stage } from '../stage.ts';

/** Halves behind colored walls: a color of their own could be taken for one of the scale's. */
const pale = '#e9e9e4';
const clashing = '#d23b2a';

/** Of its kind, but for what is not to be overlooked or to be taken for something else. */
function colorOf(kind: string, onColors: boolean, seat: BossSeat['state'] | undefined): string {
  if (seat === 'clash') return clashing;
  return onColors && halves.includes(kind) ? pale : kindOf(kind).color;
}

/** Bosses light up in their sockets and glow red where they clash; what is pointed at or picked glows a little. */
function glow(
  subject: string,
  near: ReadonlySet<string | undefined>,
  seats: ReadonlyMap<string, BossSeat['state']>,
): string {
  const seat = seats.get(subject);
  if (seat === 'clash') return '#6a0d06';
  if (seat === 'in its socket') return '#c98a00';
  return near.has(subject) ? '#7a4a10' : '#000000';
}

/** What is shown, what is seen through, and what stands out. */
export function looks(stage: Stage): () => void {
  return effect(() => {
    // Read so that new things get their looks too.
    void pictured.value;
    const closing = openPanel.value === 'register' ? seatings.value : [];
    const seats = new Map(closing.map(({ id, state }) => [id, state]));
    const away = hidden.value;
    const through = seeThrough.value;
    const onColors = openPanel.value === 'walls' || openPanel.value === 'filling';
    const near = new Set([pointedAt.value, picked.value]);
    stage.scene.traverse((object) => {
      if (!(object instanceof Mesh) || typeof object.userData.kind !== 'string') return;
      const kind = object.userData.kind;
      const { material } = object;
      if (!(material instanceof MeshStandardMaterial)) return;
      object.visible = !away.has(kind);
      material.color.set(colorOf(kind, onColors, seats.get(object.userData.subject)));
      const glass = through && halves.includes(kind);
      // Only what changes how it is drawn makes the graphics program anew.
      if (material.transparent !== glass) material.needsUpdate = true;
      material.transparent = glass;
      material.opacity = glass ? 0.22 : 1;
      material.depthWrite = !glass;
      material.side = glass ? DoubleSide : FrontSide;
      material.emissive.set(glow(object.userData.subject, near, seats));
    });
    stage.draw();
  });
}
