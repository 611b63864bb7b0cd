import { type Finding, type Severity, severities } from '../findings/index.ts';
import { counted } from './counted.ts';

const words: Readonly<Record<Severity, readonly [one: string, many: string]>> = {
  stop: ['stop', 'stops'],
  warn: ['warning', 'warnings'],
  note: ['note', 'notes'],
};

/** How many findings of each severity there are, the gravest first: `1 stop, 2 warnings, 0 notes`. */
export const tally = (findings: readonly Pick<Finding, 'severity'>[]): string =>
  severities
    .map((severity) => {
      const count = findings.filter((one) => one.severity === severity).length;
      return counted(count, ...words[severity]);
    })
    .join(', ');
