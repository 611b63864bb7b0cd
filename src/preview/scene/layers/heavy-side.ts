import { effect } from '@preact/signals';
import { quantity } from '../../state/show.ts';
import { mold } from '../../state/store.ts';
import { type ShownUnbalance, unbalance } from '../../state/unbalance.ts';
import { lightNow, openPanel } from '../../state/view.ts';
import { Overlay } from '../overlay.ts';
import type { Stage } from '../stage.ts';
import { styleColor } from '../text-label.ts';

type Place = readonly [number, number, number];
const segments = 96;

/** The unbalance as an arrow and what is allowed as a circle, on the outer face of the upper half, while the sheet on balance is open. */
export function heavySide(stage: Stage): () => void {
  const overlay = new Overlay(stage, 'upper');
  const stop = effect(() => {
    overlay.clear();
    void lightNow.value;
    const found = openPanel.value === 'balance' ? unbalance.value : undefined;
    if (found) draw(overlay, found, mold.value?.disc.upper ?? 0);
    stage.draw();
  });
  return () => {
    stop();
    overlay.remove();
  };
}

function draw(overlay: Overlay, { sizeGmm, angleRad, allowedGmm, scale }: ShownUnbalance, z: number): void {
  const isOver = allowedGmm !== undefined && sizeGmm > allowedGmm;
  const ink = styleColor(isOver ? '--stop' : '--ink');
  const at = (radius: number, angle: number): Place => [
    radius * Math.cos(angle),
    radius * Math.sin(angle),
    z,
  ];
  if (allowedGmm !== undefined) {
    const radius = allowedGmm * scale;
    const ring = Array.from({ length: segments }, (_, i) => (2 * Math.PI * i) / segments);
    const step = (2 * Math.PI) / segments;
    overlay.lines(
      ring.flatMap((angle) => [at(radius, angle), at(radius, angle + step)]),
      styleColor('--fine'),
      2.5,
    );
    overlay.word(
      `allowed ${quantity(allowedGmm, 'g.mm')}`,
      at(radius, angleRad + Math.PI),
      styleColor('--fine'),
    );
  }
  const size = sizeGmm * scale;
  const tip = at(size, angleRad);
  const barb = (way: number): Place => {
    const back = at(Math.min(6, size * 0.4), angleRad + Math.PI + way * 0.4);
    return [tip[0] + back[0], tip[1] + back[1], z];
  };
  overlay.lines([[0, 0, z], tip, tip, barb(1), tip, barb(-1)], ink, 4);
  overlay.word(quantity(sizeGmm, 'g.mm'), at(size + 4, angleRad), ink);
}
