import {
  type CodeEntry,
  catalogue,
  entryOf,
  type FindingCode,
  type Template,
} from '../../src/findings/index.ts';
import { nearestName } from '../../src/plan/index.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { strong, type Terminal, wrap } from '../terminal.ts';

/** Prints what a finding means, what it is judged by, where that is from, and what to do. */
export function runExplain(code: string, terminal: Terminal): ExitCode {
  if (!isCode(code)) {
    const begun = Object.keys(catalogue).filter((known) => code !== '' && known.startsWith(code));
    if (begun.length === 0) throw new Unreadable(unknown(code));
    terminal.out([`findings that begin with ${code}:`, ...begun.map((known) => `  ${known}`)].join('\n'));
    return exitCode.fine;
  }
  terminal.out(explain(code, entryOf(code), terminal.width));
  return exitCode.fine;
}

const isCode = (text: string): text is FindingCode => Object.hasOwn(catalogue, text);

function unknown(code: string): string {
  const meant = nearestName(code, Object.keys(catalogue));
  const hint = meant ? `did you mean ${meant}?` : 'docs/findings.md lists all of them.';
  return `there is no finding "${code.slice(0, 60)}"; ${hint}`;
}

/** One row, or one for each sentence of a table. */
const sentences = (name: string, template: Template): string[][] =>
  [...new Set(typeof template === 'string' ? [template] : Object.values(template))].map((text, i) => [
    i === 0 ? name : '',
    text,
  ]);

function explain(
  code: FindingCode,
  { severity, safety, means, formula, source, says, remedy }: CodeEntry,
  width: number,
): string {
  const rows = [
    ['means', means],
    [
      'formula',
      formula ?? (code.endsWith('.not-checked') ? 'none: nothing is judged' : 'none: it is seen directly'),
    ],
    ['source', source ?? 'the program itself, no published source'],
    ...sentences('says', says),
    ...sentences('to do', remedy),
  ];
  const lines = rows.map(([name, text]) => wrap(`${name.padEnd(9)}${text}`, width, '  ', ' '.repeat(11)));
  return [
    strong(`${code}: ${severity}${safety ? ', protects people and cannot be lowered' : ''}`),
    ...lines,
  ].join('\n');
}
