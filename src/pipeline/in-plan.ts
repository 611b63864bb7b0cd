import type { Finding, TextPlace } from '../findings/index.ts';
import type { Mold } from '../mold/index.ts';

/**
 * Findings with the line of the plan where their subject stands, as far as they have none. Checks and parts do not
 * see lines, so that what they found stays true (and cached) when lines are moved.
 */
export function inPlan(findings: readonly Finding[], mold: Mold): Finding[] {
  const { masters, placements, bosses, tabs, notches, channels, sprue, bench } = mold;
  const places = new Map<string, TextPlace>();
  for (const [section, { at }] of Object.entries(bench)) places.set(section, at);
  for (const { id, at } of [...masters, ...channels, ...notches, ...tabs, ...bosses, ...placements]) {
    if (at) places.set(id, at);
  }
  if (sprue?.at) places.set('sprue', sprue.at);
  return findings.map((one) => {
    const at = one.at ?? places.get(one.subject);
    return at ? { ...one, at } : one;
  });
}
