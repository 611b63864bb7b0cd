import type { Disc } from '../mold.ts';

/** Index mark: a groove in the outer face at angle 0 that runs out through the rim. Common practice, mm. */
export const indexMark = { width: 2, length: 8, depth: 0.8 } as const;

/** Why halves cannot be made: a half so thin that the groove, below the chamfer, opens it; a disc no wider than two grooves are long. */
export interface DiscFault {
  readonly which: 'thin' | 'small';
  readonly measured: number;
  readonly limit: number;
}

export function discFaults({ radius, lower, upper, rimChamfer }: Disc): DiscFault[] {
  const thin = {
    which: 'thin',
    measured: Math.min(lower, upper),
    limit: indexMark.depth + rimChamfer,
  } as const;
  const small = { which: 'small', measured: 2 * radius, limit: 2 * (indexMark.length + rimChamfer) } as const;
  return [thin, small].filter(({ measured, limit }) => measured <= limit);
}
