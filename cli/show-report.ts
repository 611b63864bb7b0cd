import {
  type Figure,
  type FigureName,
  figureCatalogue,
  figureHeadings,
  headingOf,
  type Report,
  type UnitSystem,
} from '../src/findings/index.ts';
import { showFigure, showQuantity } from '../src/wording/index.ts';
import { fitColumn, strong, table } from './terminal.ts';

/**
 * Figures as a table under the headings of their checks: one line for each name, or where its values differ two, the
 * least and the most. Estimated values are marked with ~. All of them, with names and sources, are in report.json.
 */
export function showFigures(report: Report, width: number): string {
  const headings = [...new Set(Object.values(figureHeadings))];
  const groups = headings.map((heading) => ({
    heading,
    rows: rowsOf(
      report.figures.filter(({ name }) => headingOf(name) === heading),
      report.units,
    ),
  }));
  const filled = groups.filter(({ rows }) => rows.length > 0);
  if (filled.length === 0) return '';
  // One table, so that all groups share its columns.
  const all = filled.flatMap(({ rows }) => rows);
  const lines = table(fitColumn(all, 3, width), [2]).split('\n');
  return filled
    .map(({ heading, rows }) => [strong(heading), ...lines.splice(0, rows.length)].join('\n'))
    .join('\n');
}

function rowsOf(figures: readonly Figure[], units: UnitSystem): string[][] {
  const byName = new Map<FigureName, Figure[]>();
  for (const figure of figures) {
    const some = byName.get(figure.name);
    if (some) some.push(figure);
    else byName.set(figure.name, [figure]);
  }
  return [...byName].flatMap(([name, some]) => figureRows(`  ${figureCatalogue[name].label}`, some, units));
}

function figureRows(label: string, figures: readonly Figure[], units: UnitSystem): string[][] {
  const show = (figure: Figure): string => showFigure(figure, units);
  const sorted = [...figures].sort((a, b) => a.value - b.value);
  const [least, most] = [sorted[0], sorted[sorted.length - 1]];
  const others = figures.length - 1;
  if (show(least) === show(most)) {
    const { by, subject } = figures[0];
    const of = by ? `by: ${figureCatalogue[by].label}` : subject;
    return [[label, '', show(least), others > 0 ? `${of} and ${others} more` : of]];
  }
  return [
    [label, 'least', show(least), least.subject],
    ['', 'most', show(most), most.subject],
  ];
}

/** Of each field the least value anywhere and the greatest; the values themselves are for the page. */
export function showFields({ fields, units }: Report, width: number): string {
  const rows = [...new Set(fields.map(({ name }) => name))].flatMap((name) => {
    const ends = fields
      .filter((field) => field.name === name && field.values.length > 0)
      .map(({ subject, unit, values }) => ({ subject, unit, ...endsOf(values) }));
    if (ends.length === 0) return [];
    const thin = ends.reduce((a, b) => (b.least < a.least ? b : a));
    const thick = ends.reduce((a, b) => (b.most > a.most ? b : a));
    return [
      [`  ${name}`, 'least', showQuantity(thin.least, thin.unit, units), thin.subject],
      ['', 'most', showQuantity(thick.most, thick.unit, units), thick.subject],
    ];
  });
  return rows.length === 0 ? '' : `${strong('At every vertex')}\n${table(fitColumn(rows, 3, width), [2])}`;
}

function endsOf(values: Float32Array): { least: number; most: number } {
  let [least, most] = [values[0], values[0]];
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return { least, most };
}
