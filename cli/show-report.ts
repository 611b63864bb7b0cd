import { type Finding, type Report, worstFirst } from '../src/findings/index.ts';
import { showQuantity } from './show-quantity.ts';
import { severityMark, table, wrap } from './terminal.ts';

const lineWidth = 100;

const placeOf = (finding: Finding): string => {
  if (finding.at) return `${finding.at.file}:${finding.at.line}:${finding.at.column}`;
  if (finding.place) return `at (${finding.place.map((value) => value.toFixed(1)).join(', ')}) mm`;
  return '';
};

/** One finding: severity, code, subject and place; then what is wrong and what to do. */
export function showFinding(finding: Finding): string {
  const head = [severityMark(finding.severity), finding.code, finding.subject, placeOf(finding)]
    .filter((cell) => cell !== '')
    .join('  ');
  const body = wrap(`${finding.says} ${finding.remedy}`, lineWidth - 6).replaceAll(/^/gm, '      ');
  return `${head}\n${body}`;
}

/** All findings, worst first. */
export const showFindings = (findings: readonly Finding[]): string =>
  worstFirst(findings).map(showFinding).join('\n');

/** Figures as a table; estimated values are marked with ~. */
export function showFigures(report: Report): string {
  if (report.figures.length === 0) return '';
  const rows = report.figures.map(({ name, subject, value, unit, estimated, source }) => [
    name,
    subject,
    `${estimated ? '~' : ''}${showQuantity(value, unit)}`,
    source,
  ]);
  return table([['figure', 'of', 'value', 'source'], ...rows], [2]);
}

/** How many of each severity, in words. */
export function tally(findings: readonly Finding[]): string {
  const count = (severity: Finding['severity']) => findings.filter((one) => one.severity === severity).length;
  return `${count('stop')} stop, ${count('warn')} warn, ${count('note')} note`;
}
