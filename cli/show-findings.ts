import { type Cause, causesByCode, type Finding, type UnitSystem } from '../src/findings/index.ts';
import { type CauseSentences, sayCause, sayFinding } from '../src/wording/index.ts';
import { plain, severityMark, shorten, wrap } from './terminal.ts';

/** Indent of what belongs to a finding's head line. */
const indent = '      ';

/** Widest name of a subject shown beside other columns. */
const subjectWidth = 48;

/** Of one code, this many causes of warnings or notes are shown; of stops all. */
const shownOfOneCode = 6;

/** What lines are made for. */
interface Page {
  readonly units: UnitSystem;
  readonly width: number;
}

const spaced = (gap: string, ...texts: readonly string[]): string =>
  texts.filter((text) => text !== '').join(gap);

const head = (finding: Finding, ...cells: readonly string[]): string =>
  spaced('  ', severityMark(finding.severity), finding.code, ...cells);

/** What the plan made of its severity, and why. */
const changeOf = ({ changed }: Finding): string =>
  changed ? `(The plan changed this from ${changed.from}: ${changed.reason})` : '';

const fileOf = ({ at }: Finding): string | undefined => at?.file;

/** What a cause is about, unless that is the file it stands in. */
const subjectsOf = ({ worst }: Cause, { subjects }: CauseSentences): string =>
  fileOf(worst) === worst.subject ? '' : shorten(subjects, subjectWidth);

/** One cause alone: severity, code, what it is about and where in the plan; then what is wrong and what to do. */
function showCause(cause: Cause, { units, width }: Page): string {
  const said = sayCause(cause, units);
  const { at, place } = cause.worst;
  const line = at ? `${at.file}:${at.line}:${at.column}` : '';
  const first = head(cause.worst, subjectsOf(cause, said), line);
  const beside = cause.findings.length === 1 && place ? spaced('  ', first, said.where) : '';
  const fits = beside !== '' && plain(beside).length <= width;
  const lines = said.lines.startsWith('lines') ? said.lines : '';
  const told = spaced(', ', fits ? '' : said.where, lines);
  const where = told === '' ? '' : `${told}:`;
  const body = spaced(' ', where, said.says, said.remedy, changeOf(cause.worst));
  return [...wrap(fits ? beside : first, width, '', indent).split('\n'), wrap(body, width, indent)].join(
    '\n',
  );
}

/** Several causes of one code: what each is about, where, and what is wrong; then once what to do. */
function showCauses(causes: readonly Cause[], { units, width }: Page): string {
  const [{ worst: first }] = causes;
  const said = causes.map((cause) => sayCause(cause, units));
  const file = causes.every(({ worst }) => fileOf(worst) === fileOf(first)) ? fileOf(first) : undefined;
  const once = said.every(({ remedy }) => remedy === said[0].remedy);
  const shown = first.severity === 'stop' ? causes.length : Math.min(causes.length, shownOfOneCode);
  const lines = causes.slice(0, shown).map((cause, i) => {
    const inFile = file === undefined ? (fileOf(cause.worst) ?? '') : '';
    const where = spaced(', ', spaced(' ', inFile, said[i].lines), said[i].where);
    // What is said of one alone names it.
    const several = cause.findings.length > 1 ? said[i].subjects : '';
    const about = several === '' ? where : spaced(', ', shorten(several, subjectWidth), where);
    const text = spaced(' ', said[i].says, once ? '' : said[i].remedy, changeOf(cause.worst));
    return wrap(about === '' ? text : `${about}: ${text}`, width, indent, `${indent}  `);
  });
  if (shown < causes.length)
    lines.push(`${indent}... and ${causes.length - shown} more like these; --json shows all.`);
  if (once) lines.push(wrap(said[0].remedy, width, indent));
  const places = causes.reduce((sum, { findings }) => sum + findings.length, 0);
  const title = head(first, `${places} places${file === undefined ? '' : ` in ${file}`}`);
  return [wrap(title, width, '', indent), ...lines].join('\n');
}

/** A note that something is not checked since the plan leaves something out; it names what to add. */
const isLeftOut = ({ code, severity }: Finding): boolean =>
  severity === 'note' && code.endsWith('.not-checked');

/** On as few lines as may be: what to do is to add what it names. */
const showLeftOut = (finding: Finding, { units, width }: Page): string =>
  wrap(head(finding, spaced(' ', sayFinding(finding, units).says, changeOf(finding))), width, '', indent);

/** All findings in the person's units, worst first; those of one code together, and of one cause as one. */
export function showFindings(findings: readonly Finding[], units: UnitSystem, width: number): string {
  const page = { units, width };
  return causesByCode(findings)
    .map((causes) => {
      if (isLeftOut(causes[0].worst))
        return causes
          .flatMap((cause) => cause.findings)
          .map((one) => showLeftOut(one, page))
          .join('\n');
      return causes.length === 1 ? showCause(causes[0], page) : showCauses(causes, page);
    })
    .join('\n');
}
