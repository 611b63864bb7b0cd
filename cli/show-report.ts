import {
  type Figure,
  type FigureName,
  type Finding,
  figureCatalogue,
  figureHeadings,
  groupAlike,
  headingOf,
  type Report,
  type UnitSystem,
} from '../src/findings/index.ts';
import { placeText, sayFinding, showQuantity } from '../src/wording/index.ts';
import { lineWidth, plain, severityMark, shorten, strong, table, wrap } from './terminal.ts';

/** Indent of what belongs to a finding's head line. */
const indent = '      ';

/** Widest name of a subject shown beside other columns, so that a line stays within the page. */
const subjectWidth = 36;
const figureSubjectWidth = 28;

/** Of one code, this many warnings or notes are shown; stops are shown all. */
const shownOfOneCode = 6;

/** Line in the plan or the mesh's text, and place on the disc or the mesh, as far as they are known. */
const placesOf = ({ at, place }: Finding, units: UnitSystem): [string, string] => [
  at ? `${at.file}:${at.line}:${at.column}` : '',
  place ? `at ${placeText(place, units)}` : '',
];

const spaced = (gap: string, ...texts: readonly string[]): string =>
  texts.filter((text) => text !== '').join(gap);

const head = (finding: Finding, ...cells: readonly string[]): string =>
  spaced('  ', severityMark(finding.severity), finding.code, ...cells);

/** Its subject, unless its place says the same. */
const subjectOf = ({ subject, at }: Finding): string =>
  at?.file === subject ? '' : shorten(subject, subjectWidth);

/** What the plan made of its severity, and why. */
const changeOf = ({ changed }: Finding): string =>
  changed ? `(The plan changed this from ${changed.from}: ${changed.reason})` : '';

/** One finding: severity, code, subject and place; then what is wrong and what to do. */
function showFinding(finding: Finding, units: UnitSystem): string {
  const [line, place] = placesOf(finding, units);
  const { says, remedy } = sayFinding(finding, units);
  const whole = head(finding, subjectOf(finding), line, place);
  const fits = plain(whole).length <= lineWidth;
  const body = spaced(' ', fits ? '' : place, says, remedy, changeOf(finding));
  return `${fits ? whole : head(finding, subjectOf(finding), line)}\n${wrap(body, lineWidth, indent)}`;
}

/** Several findings of one code: each one's place and what is wrong, then once what to do. */
function showAlike(alike: readonly Finding[], units: UnitSystem): string {
  const [first] = alike;
  const shown = first.severity === 'stop' ? alike : alike.slice(0, shownOfOneCode);
  const file = alike.every(({ at }) => at?.file === first.at?.file) ? first.at?.file : undefined;
  const remedies = new Set(alike.map((one) => sayFinding(one, units).remedy));
  const [oneRemedy] = remedies.size === 1 ? remedies : [];
  const lines = shown.map((one) => {
    const [line, place] = placesOf(one, units);
    const { says, remedy } = sayFinding(one, units);
    const where = spaced(', ', file !== undefined && one.at ? `line ${one.at.line}` : line, place);
    const todo = oneRemedy === undefined ? remedy : '';
    const text = spaced(' ', where === '' ? '' : `${where}:`, says, todo, changeOf(one));
    return wrap(text, lineWidth, indent, `${indent}  `);
  });
  const more = alike.length - shown.length;
  if (more > 0) lines.push(`${indent}... and ${more} more like these; --json shows all.`);
  if (oneRemedy !== undefined) lines.push(wrap(oneRemedy, lineWidth, indent));
  const times = `${alike.length} times${file === undefined ? '' : ` in ${file}`}`;
  return [head(first, times), ...lines].join('\n');
}

/** A note that something is not checked since the plan leaves something out; it names what to add. */
const isLeftOut = ({ code, severity }: Finding): boolean =>
  severity === 'note' && code.endsWith('.not-checked');

/** On as few lines as may be: what to do is to add what it names. */
const showLeftOut = (finding: Finding, units: UnitSystem): string =>
  wrap(head(finding, spaced(' ', sayFinding(finding, units).says, changeOf(finding))), lineWidth, '', indent);

/** All findings in the person's units, worst first; those of one code and severity together. */
export function showFindings(findings: readonly Finding[], units: UnitSystem): string {
  return groupAlike(findings)
    .map((group) => {
      if (isLeftOut(group[0])) return group.map((one) => showLeftOut(one, units)).join('\n');
      return group.length === 1 ? showFinding(group[0], units) : showAlike(group, units);
    })
    .join('\n');
}

/**
 * Figures as a table under the headings of their checks: one line for each name, or where its values differ two, the
 * least and the most. Estimated values are marked with ~. All of them, with names and sources, are in report.json.
 */
export function showFigures(report: Report): string {
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
  const lines = table(
    filled.flatMap(({ rows }) => rows),
    [2],
  ).split('\n');
  return filled
    .map(({ heading, rows }) => [strong(heading), ...lines.splice(0, rows.length)].join('\n'))
    .join('\n');
}

function rowsOf(figures: readonly Figure[], units: UnitSystem): string[][] {
  const byName = new Map<FigureName, Figure[]>();
  for (const figure of figures) byName.set(figure.name, [...(byName.get(figure.name) ?? []), figure]);
  return [...byName].flatMap(([name, some]) => figureRows(`  ${figureCatalogue[name].label}`, some, units));
}

function figureRows(label: string, figures: readonly Figure[], units: UnitSystem): string[][] {
  const show = ({ value, unit, estimated }: Figure): string =>
    `${estimated ? '~' : ''}${showQuantity(value, unit, units)}`;
  const sorted = [...figures].sort((a, b) => a.value - b.value);
  const [least, most] = [sorted[0], sorted[sorted.length - 1]];
  const others = figures.length - 1;
  if (show(least) === show(most)) {
    const { by, subject } = figures[0];
    const of = shorten(by ? `by: ${figureCatalogue[by].label}` : subject, figureSubjectWidth);
    return [[label, '', show(least), others > 0 ? `${of} and ${others} more` : of]];
  }
  return [
    [label, 'least', show(least), shorten(least.subject, figureSubjectWidth)],
    ['', 'most', show(most), shorten(most.subject, figureSubjectWidth)],
  ];
}

/** Of each field the least value anywhere and the greatest; the values themselves are for the page. */
export function showFields({ fields, units }: Report): string {
  const rows = [...new Set(fields.map(({ name }) => name))].flatMap((name) => {
    const ends = fields
      .filter((field) => field.name === name && field.values.length > 0)
      .map(({ subject, unit, values }) => ({ subject, unit, ...endsOf(values) }));
    if (ends.length === 0) return [];
    const thin = ends.reduce((a, b) => (b.least < a.least ? b : a));
    const thick = ends.reduce((a, b) => (b.most > a.most ? b : a));
    return [
      [
        `  ${name}`,
        'least',
        showQuantity(thin.least, thin.unit, units),
        shorten(thin.subject, figureSubjectWidth),
      ],
      ['', 'most', showQuantity(thick.most, thick.unit, units), shorten(thick.subject, figureSubjectWidth)],
    ];
  });
  return rows.length === 0 ? '' : `${strong('At every vertex')}\n${table(rows, [2])}`;
}

function endsOf(values: Float32Array): { least: number; most: number } {
  let [least, most] = [values[0], values[0]];
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return { least, most };
}
