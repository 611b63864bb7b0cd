/** One command as typed, and what is to be seen then. */
export interface Step {
  readonly line: number;
  readonly typed: readonly string[];
  /** Pieces of what is printed, in this order; white space counts once. */
  readonly printed: readonly string[];
  readonly notPrinted: readonly string[];
  readonly exit: number;
}

/** What a person does, in order: writes a file, changes one, or types a command. */
export type Deed =
  | { readonly kind: 'write'; readonly name: string; readonly content: string }
  | { readonly kind: 'change'; readonly name: string; readonly from: string; readonly to: string }
  | ({ readonly kind: 'type' } & Step);

/**
 * Reads a walk: text for people, and in fenced blocks what is done. `yaml NAME` (or another language) writes a file;
 * `change NAME` has pairs of lines, - as it was and + as it is now; `console` has commands behind $, under each the
 * pieces of what must be printed, `not:` before what must not be, and `exit N` where it does not end with 0.
 */
export function readWalk(text: string): Deed[] {
  const deeds: Deed[] = [];
  for (const { index, 1: language, 2: name, 3: inner } of text.matchAll(
    /^```(\w+) ?(.*)\n((?:.*\n)*?)^```$/gm,
  )) {
    const line = text.slice(0, index).split('\n').length + 1;
    if (language === 'console') deeds.push(...steps(inner, line));
    else if (language === 'change') deeds.push(...changes(name, inner));
    else deeds.push({ kind: 'write', name, content: inner });
  }
  return deeds;
}

function changes(name: string, inner: string): Deed[] {
  return [...inner.matchAll(/^- (.*)\n((?:\+ .*\n)+)/gm)].map(([, from, added]) => {
    const to = added.trimEnd().replaceAll(/^\+ /gm, '');
    return { kind: 'change', name, from, to };
  });
}

function steps(inner: string, first: number): Deed[] {
  const lines = inner.trimEnd().split('\n');
  const starts = lines.flatMap((line, i) => (line.startsWith('$ ') ? [i] : []));
  return starts.map((at, i) => {
    const under = lines.slice(at + 1, starts[i + 1]).filter((line) => line.trim() !== '');
    const exit = under.flatMap((line) => line.match(/^exit (\d)$/)?.[1] ?? []);
    const rest = under.filter((line) => !/^exit \d$/.test(line));
    return {
      kind: 'type',
      line: first + at,
      typed: wordsOf(lines[at].slice(2)),
      printed: rest.filter((line) => !line.startsWith('not: ')),
      notPrinted: rest.filter((line) => line.startsWith('not: ')).map((line) => line.slice(5)),
      exit: Number(exit[0] ?? 0),
    };
  });
}

/** As a shell would part them: quotes keep words together. */
const wordsOf = (typed: string): string[] =>
  [...typed.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain);
