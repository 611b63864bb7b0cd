import { computed } from '@preact/signals';
import { toRadians } from '../../geometry/index.ts';
import { figureOf } from './figures.ts';
import { mold } from './store.ts';

/** The unbalance as it is drawn on the disc, mold frame. */
export interface ShownUnbalance {
  readonly sizeGmm: number;
  readonly angleRad: number;
  readonly allowedGmm: number | undefined;
  /** Millimeters drawn for one g.mm, a round number. */
  readonly scale: number;
  /** Where a mass at the rim puts it right, and how much. */
  readonly correctionG: number | undefined;
}

/** How much of the disc's radius the largest of it takes. */
const share = 0.82;

export const unbalance = computed<ShownUnbalance | undefined>(() => {
  const [size, angle] = [figureOf('balance.static'), figureOf('balance.angle')];
  const radius = mold.value?.disc.radius;
  if (!size || !angle || radius === undefined) return undefined;
  const allowed = figureOf('balance.permissible')?.value;
  const largest = Math.max(size.value, allowed ?? 0);
  return {
    sizeGmm: size.value,
    angleRad: toRadians(angle.value),
    allowedGmm: allowed,
    scale: 1 / roundUp(largest / (share * radius)),
    correctionG: figureOf('balance.correction')?.value,
  };
});

/** The next of 1, 2, 5, 10, ... */
function roundUp(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  const step = [1, 2, 5, 10].find((one) => one * power >= value * (1 - 1e-9)) ?? 10;
  return step * power;
}
