/** How many of each kind were met in each of two lots. */
export interface TwoByTwo {
  readonly bad: number;
  readonly of: number;
}

/**
 * Chance that the second lot would hold so few bad ones or fewer if nothing had changed, all sums given: the exact test of
 * R. A. Fisher, The Design of Experiments (1935), one-sided. 1 where nothing was bad, or a lot is empty. Throws RangeError
 * for counts that cannot be.
 */
export function fisherFewer(before: TwoByTwo, after: TwoByTwo): number {
  for (const { bad, of } of [before, after])
    if (!Number.isInteger(bad) || !Number.isInteger(of) || bad < 0 || bad > of)
      throw new RangeError(`${bad} of ${of} is no share of trials`);
  const bad = before.bad + after.bad;
  const all = before.of + after.of;
  const least = Math.max(0, bad - before.of);
  let chance = 0;
  for (let k = least; k <= after.bad; k++)
    chance += Math.exp(logChoose(after.of, k) + logChoose(before.of, bad - k) - logChoose(all, bad));
  return Math.min(1, chance);
}

/** Natural logarithm of the number of ways to choose k of n. */
function logChoose(n: number, k: number): number {
  let sum = 0;
  for (let i = 1; i <= k; i++) sum += Math.log((n - k + i) / i);
  return sum;
}
