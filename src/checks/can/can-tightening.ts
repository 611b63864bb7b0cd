import type { Figure } from '../../findings/index.ts';
import { tighteningTorque } from '../../physics/index.ts';
import { torqueFactors } from '../../tables/index.ts';
import { closingFigure } from './can-figure.ts';

/** What is tightened. */
type Tightened = 'bolt' | 'clamp';

const names = {
  bolt: ['closing.boltPreload', 'closing.boltTorqueLeast', 'closing.boltTorqueMost'],
  clamp: ['closing.clampPreload', 'closing.clampTorqueLeast', 'closing.clampTorqueMost'],
} as const satisfies Record<Tightened, readonly string[]>;

/** The force a screw is to be tightened to, and the range of torque that may take; no torque without its diameter (mm). */
export function tightening(
  what: Tightened,
  force: number,
  diameter: number | undefined,
  source: string,
): Figure[] {
  const [preload, least, most] = names[what];
  const { source: range, ...factors } = torqueFactors;
  const torque = (factor: number): number => tighteningTorque(factor, force, diameter ?? 0);
  return [
    closingFigure(preload, force, source),
    ...(diameter === undefined
      ? []
      : [
          closingFigure(least, torque(factors.least), range.text),
          closingFigure(most, torque(factors.most), range.text),
        ]),
  ];
}
