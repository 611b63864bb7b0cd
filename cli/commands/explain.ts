import { type CodeEntry, catalogue, type FindingCode } from '../../src/findings/index.ts';
import { nearestName } from '../../src/plan/index.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { lineWidth, strong, type Terminal, wrap } from '../terminal.ts';

/** Prints what a finding means, what it is judged by, where that is from, and what to do. */
export function runExplain(code: string, terminal: Terminal): ExitCode {
  if (!isCode(code)) throw new Unreadable(unknown(code));
  terminal.out(explain(code, catalogue[code]));
  return exitCode.fine;
}

const isCode = (text: string): text is FindingCode => Object.hasOwn(catalogue, text);

function unknown(code: string): string {
  const meant = nearestName(code, Object.keys(catalogue));
  const hint = meant ? `did you mean ${meant}?` : 'docs/findings.md lists all of them.';
  return `there is no finding "${code.slice(0, 60)}"; ${hint}`;
}

function explain(code: FindingCode, { severity, safety, means, formula, source, remedy }: CodeEntry): string {
  const rows = [
    ['means', means],
    [
      'formula',
      formula ?? (code.endsWith('.not-checked') ? 'none: nothing is judged' : 'none: it is seen directly'),
    ],
    ['source', source ?? 'the program itself, no published source'],
    ['to do', remedy],
  ];
  const lines = rows.map(([name, text]) => wrap(`${name.padEnd(9)}${text}`, lineWidth, '  ', ' '.repeat(11)));
  return [
    strong(`${code}: ${severity}${safety ? ', protects people and cannot be lowered' : ''}`),
    ...lines,
  ].join('\n');
}
