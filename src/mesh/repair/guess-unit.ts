import { mmPerInch } from '../../geometry/index.ts';
import type { FileUnit } from '../raw.ts';

/** Millimeters in one of each unit (the inch is 25.4 mm by definition). */
export const mmPer: Readonly<Record<FileUnit, number>> = {
  micron: 0.001,
  mm: 1,
  cm: 10,
  m: 1000,
  in: mmPerInch,
  ft: 304.8,
};

/**
 * The unit that makes a file's longest side plausible for a part that is spun in a disc mold: millimeters from 2 to
 * 1000, inches from 0.2 to 2 (5 to 51 mm), meters below that (2 to 200 mm), microns above 1000 (1 to 1000 mm).
 * Common practice, no published source: STL and OBJ say no unit. Anything else is taken as millimeters.
 * `longest` is in the file's own unit, times the scale the master is made at.
 */
export function guessUnit(longest: number): FileUnit {
  if (longest >= 2 && longest <= 1000) return 'mm';
  if (longest >= 0.2 && longest < 2) return 'in';
  if (longest >= 0.002 && longest < 0.2) return 'm';
  if (longest > 1000 && longest <= 1_000_000) return 'micron';
  return 'mm';
}
