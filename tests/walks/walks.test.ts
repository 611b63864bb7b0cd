import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesIn, run, stackTrace, workbench } from '../cli/workbench.ts';
import { hasPoppler, pageTexts } from '../rendered-page.ts';
import { type Deed, readWalk, type Step } from './read-walk.ts';

const here = new URL('./', import.meta.url);
const once = (text: string): string => text.replaceAll(/\s+/g, ' ').trim();

/** Words that name something in the person's folder: what has an ending of a file, and folders by the option before. */
const isPath = (word: string, before: string | undefined): boolean =>
  before === '--out' || /\.(yaml|stl|obj|3mf|svg|dxf|csv)$/.test(word);

interface Seen {
  readonly code: number;
  readonly text: string;
}

/** What commands of the shell stand for here, besides the program itself. */
const others: Readonly<Record<string, (folder: string, ...names: string[]) => string>> = {
  ls: (folder, name) => [...filesIn(join(folder, name)).keys()].join('\n'),
  cat: (folder, name) => readFileSync(join(folder, name), 'utf8'),
  pdftotext: (folder, name) => pageTexts(readFileSync(join(folder, name))).join('\n'),
  ln: (folder, _, target, name) => {
    symlinkSync(target, join(folder, name));
    return '';
  },
};

async function type(folder: string, { typed: [program, ...words] }: Step): Promise<Seen> {
  if (program !== 'discwright') return { code: 0, text: others[program](folder, ...words) };
  const args = words.map((word, i) => (isPath(word, words[i - 1]) ? join(folder, word) : word));
  const { code, out, err } = await run(...args);
  expect(`${out}${err}`).not.toMatch(stackTrace);
  return { code, text: `${out}\n${err}`.replaceAll(`${folder}/`, '') };
}

/** Each piece after the one before; what is missing is shown with all that was printed. */
function expectPrinted({ line, printed, notPrinted, exit }: Step, { code, text }: Seen, walk: string): void {
  const whole = once(text);
  let at = 0;
  for (const piece of printed) {
    const found = whole.indexOf(once(piece), at);
    expect
      .soft(found, `${walk}:${line}: not printed (from here on): ${piece}\n\n${text}`)
      .toBeGreaterThanOrEqual(0);
    if (found >= 0) at = found + once(piece).length;
  }
  for (const piece of notPrinted) expect.soft(whole, `${walk}:${line}`).not.toContain(once(piece));
  expect.soft(code, `${walk}:${line} exit\n\n${text}`).toBe(exit);
}

async function does(folder: string, deed: Deed, walk: string): Promise<void> {
  if (deed.kind === 'type') {
    if (deed.typed[0] === 'pdftotext' && !hasPoppler()) return;
    expectPrinted(deed, await type(folder, deed), walk);
    return;
  }
  const path = join(folder, deed.name);
  mkdirSync(dirname(path), { recursive: true });
  if (deed.kind === 'write') writeFileSync(path, deed.content);
  else {
    const before = readFileSync(path, 'utf8');
    expect(before.split(deed.from), `${walk}: ${deed.from} stands once in ${deed.name}`).toHaveLength(2);
    writeFileSync(path, before.replace(deed.from, deed.to));
  }
}

describe.each(readdirSync(here).filter((name) => name.endsWith('.md')))('%s', (walk) => {
  const bench = workbench();
  const deeds = readWalk(readFileSync(new URL(walk, here), 'utf8'));

  it('goes as it is written', async () => {
    expect(deeds.filter(({ kind }) => kind === 'type').length).toBeGreaterThan(5);
    for (const deed of deeds) await does(bench.folder, deed, walk);
  });
});

it('a walk is read as it is written', () => {
  const walk =
    'Text.\n```yaml a.yaml\nb: 1\n```\n```change a.yaml\n- b: 1\n+ b: 2\n```\n```console\n$ discwright check "a b.yaml"\nfine\nnot: bad\nexit 1\n```\n';
  expect(readWalk(walk)).toEqual([
    { kind: 'write', name: 'a.yaml', content: 'b: 1\n' },
    { kind: 'change', name: 'a.yaml', from: 'b: 1', to: 'b: 2' },
    {
      kind: 'type',
      line: 10,
      typed: ['discwright', 'check', 'a b.yaml'],
      printed: ['fine'],
      notPrinted: ['bad'],
      exit: 1,
    },
  ]);
});
