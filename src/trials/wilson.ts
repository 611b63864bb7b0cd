/** Of the standard normal distribution: 95 % lie within so many standard deviations. */
const z = 1.959963984540054;

/** A share found in so many trials, and the interval it lies in. */
export interface Share {
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly of: number;
}

/**
 * A share with its 95 % interval: the score interval of E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209, which also holds
 * for few trials and shares near 0 and 1. No trials leave all open. Throws RangeError for counts that cannot be.
 */
export function wilson(hits: number, of: number): Share {
  if (!Number.isInteger(hits) || !Number.isInteger(of) || hits < 0 || hits > of)
    throw new RangeError(`${hits} of ${of} is no share of trials`);
  if (of === 0) return { share: Number.NaN, low: 0, high: 1, of };
  const share = hits / of;
  const middle = share + z ** 2 / (2 * of);
  const half = z * Math.sqrt((share * (1 - share)) / of + (z / (2 * of)) ** 2);
  const whole = 1 + z ** 2 / of;
  return {
    share,
    low: hits === 0 ? 0 : (middle - half) / whole,
    high: hits === of ? 1 : (middle + half) / whole,
    of,
  };
}
