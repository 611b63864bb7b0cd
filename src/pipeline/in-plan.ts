import type { Finding } from '../findings/index.ts';
import type { Mold } from '../mold/index.ts';

/**
 * Findings with the line of the plan where their subject stands, as far as they have none. What finds them does not
 * see lines, so that it stays true (and cached) when lines are moved.
 */
export const inPlan = (findings: readonly Finding[], { places }: Pick<Mold, 'places'>): Finding[] =>
  findings.map((one) =>
    one.at || !Object.hasOwn(places, one.subject) ? one : { ...one, at: places[one.subject] },
  );
