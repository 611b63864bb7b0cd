import { isUnfilled } from './forecast-hits.ts';
import type { Casting } from './yields.ts';

/** Of a chi-squared variable with one degree of freedom: 95 % lie under it. */
const chiSquared = 3.841458820694124;

/** Air that stays (mm3) in each cavity under each of the Bond numbers, which go up. */
export interface AirByBond {
  readonly bonds: readonly number[];
  readonly air: ReadonlyMap<string, readonly number[]>;
}

/** Bond numbers the castings speak for. */
export interface BondRange {
  readonly low: number;
  readonly high: number;
  readonly likeliest: number;
  /** Natural logarithm of the likelihood under each, less the greatest. */
  readonly logLikelihood: readonly number[];
  readonly castings: number;
}

/**
 * The Bond numbers under which what came out is not unlikely. Under each, castings of cavities in which air stays fail with
 * one chance and the others with another, no greater one, both as likely as can be; a Bond number is kept where twice the
 * logarithm of the likelihood lies within the 95 % point of chi-squared with one degree of freedom of the greatest
 * (S. S. Wilks, Ann. Math. Stat. 9 (1938) 60). Nothing is told where no casting was looked at, or where all of them say the
 * same of every number. Only shown: no forecast takes the range by itself.
 */
export function bondRange(castings: readonly Casting[], { bonds, air }: AirByBond): BondRange | undefined {
  const known = castings.filter(({ id }) => air.has(id));
  const least = 0.5;
  const logs = bonds.map((_, k) => {
    const stays = known.filter(({ id }) => (air.get(id)?.[k] ?? 0) >= least);
    const fills = known.filter(({ id }) => (air.get(id)?.[k] ?? 0) < least);
    return likeliest(count(stays), count(fills));
  });
  const most = Math.max(...logs);
  const logLikelihood = logs.map((log) => log - most);
  const kept = bonds.filter((_, k) => -2 * logLikelihood[k] <= chiSquared);
  if (known.length === 0 || kept.length === bonds.length) return undefined;
  return {
    low: kept[0],
    high: kept[kept.length - 1],
    likeliest: bonds[logLikelihood.indexOf(0)],
    logLikelihood,
    castings: known.length,
  };
}

interface Failures {
  readonly failed: number;
  readonly of: number;
}

const count = (castings: readonly Casting[]): Failures => ({
  failed: castings.filter(isUnfilled).length,
  of: castings.length,
});

/** Greatest likelihood with the first chance at least the second: their own shares, or one for both where those cross. */
function likeliest(stays: Failures, fills: Failures): number {
  const together = { failed: stays.failed + fills.failed, of: stays.of + fills.of };
  const crossed = stays.failed * fills.of < fills.failed * stays.of;
  return crossed ? logBinomial(together) : logBinomial(stays) + logBinomial(fills);
}

/** Of the share that was found itself. */
function logBinomial({ failed, of }: Failures): number {
  if (failed === 0 || failed === of) return 0;
  const share = failed / of;
  return failed * Math.log(share) + (of - failed) * Math.log(1 - share);
}
