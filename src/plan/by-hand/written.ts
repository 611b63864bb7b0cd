import { type Document, isScalar } from 'yaml';
import { mmPerInch, toDegrees } from '../../geometry/index.ts';
import type { PlanPath } from '../plan-tree.ts';
import type { RadiusSpec } from '../sections/placements.ts';

const inches = /(in|inch|inches|")\s*$/i;

const tidy = (value: number, places: number): string => {
  const text = String(Number(value.toFixed(places)));
  return text === '-0' ? '0' : text;
};

/** What stands in the text at a path, if it is a single value. */
export function writtenAt(document: Document.Parsed, path: PlanPath): string | undefined {
  const node = document.getIn(path, true);
  return isScalar(node) ? String(node.source ?? node.value) : undefined;
}

/** A length as it is written where `before` stood: in inches where that was. A bare number is mm. */
export function writeLength(mm: number, before?: string): string {
  if (before !== undefined && inches.test(before)) return `${tidy(mm / mmPerInch, 4)} in`;
  return /mm\s*$/i.test(before ?? '') ? `${tidy(mm, 3)} mm` : tidy(mm, 3);
}

/** Degrees, from -180 up to and with 180; fine enough that nothing moves by more than a nanometer on any disc. */
export function writeAngle(rad: number): string {
  const degrees = toDegrees(rad);
  const whole = degrees - 360 * Math.ceil((degrees - 180) / 360);
  return tidy(whole, 6);
}

export const writeShare = (share: number): string => `${tidy(share * 100, 3)} %`;

/** The steps to the value of a radius, and that value for a distance from the axis in mm: its form stays. */
export function radiusValue(
  spec: RadiusSpec,
  mm: number,
  discRadius: number,
  before?: string,
): { readonly steps: PlanPath; readonly value: string } {
  if ('length' in spec) return { steps: [], value: writeLength(mm, before) };
  if ('share' in spec) return { steps: [], value: writeShare(mm / discRadius) };
  return { steps: ['fromRim'], value: writeLength(discRadius - mm, before) };
}
