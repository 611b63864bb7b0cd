import { entryOf, type Finding, isMilder } from '../findings/index.ts';
import type { Mold } from '../mold/index.ts';

/**
 * Findings as seriously as the plan's `severity` section takes them, each changed one with what it was and the plan's
 * reason. A stop that protects people stays one, whatever the plan says.
 */
export function applySeverity(
  findings: readonly Finding[],
  { severity: wanted }: Pick<Mold, 'severity'>,
): Finding[] {
  if (!wanted) return [...findings];
  return findings.map((one) => {
    const rule = Object.hasOwn(wanted, one.code) ? wanted[one.code] : undefined;
    if (!rule || rule.severity === one.severity) return one;
    const lowered = isMilder(rule.severity, one.severity);
    if (lowered && one.severity === 'stop' && entryOf(one.code).safety) return one;
    return { ...one, severity: rule.severity, changed: { from: one.severity, reason: rule.reason } };
  });
}
