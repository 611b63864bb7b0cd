import { type Figure, type Finding, type Report, worstFirst } from '../src/findings/index.ts';
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

/**
 * Figures as a table, one line for each name: the value, or where there are several the least and the greatest with
 * what they are of. Estimated values are marked with ~. All of them, with sources, are in report.json.
 */
export function showFigures(report: Report): string {
  const byName = new Map<string, Figure[]>();
  for (const figure of report.figures) byName.set(figure.name, [...(byName.get(figure.name) ?? []), figure]);
  const rows = [...byName].map(([name, figures]) => {
    const sorted = [...figures].sort((a, b) => a.value - b.value);
    const [least, greatest] = [sorted[0], sorted[sorted.length - 1]];
    return figures.length === 1
      ? [name, showFigure(least), least.subject, '', '']
      : [name, showFigure(least), least.subject, showFigure(greatest), greatest.subject];
  });
  return rows.length === 0
    ? ''
    : table([['figure', 'value or least', 'of', 'greatest', 'of'], ...rows], [1, 3]);
}

const showFigure = ({ value, unit, estimated }: Figure): string =>
  `${estimated ? '~' : ''}${showQuantity(value, unit)}`;

/** How many of each severity, in words. */
export function tally(findings: readonly Finding[]): string {
  const count = (severity: Finding['severity']) => findings.filter((one) => one.severity === severity).length;
  return `${count('stop')} stop, ${count('warn')} warn, ${count('note')} note`;
}
