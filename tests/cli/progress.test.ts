import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { runProgram } from '../../cli/program.ts';
import { withProgress } from '../../cli/progress-line.ts';
import { plain, type Terminal } from '../../cli/terminal.ts';
import { workbench } from './workbench.ts';

const bench = workbench();

/** A terminal 80 columns wide that keeps what is drawn on it. */
function watched(): { terminal: Terminal; drawn: () => string; out: string[] } {
  const screen = Object.assign(new PassThrough(), { isTTY: true, columns: 80 });
  const chunks: string[] = [];
  screen.on('data', (chunk) => chunks.push(String(chunk)));
  const out: string[] = [];
  const terminal = {
    out: (text: string) => void out.push(text),
    err: () => undefined,
    width: 80,
    bar: screen,
  };
  return { terminal, drawn: () => plain(chunks.join('')), out };
}

describe('progress', () => {
  it('is drawn as each step begins, and says what is being done', async () => {
    const { terminal, drawn } = watched();
    const seen: string[] = [];
    const result = await withProgress(terminal, false, (progress) => {
      progress({ title: 'master ivy', done: 0, total: 2 });
      seen.push(drawn());
      progress({ title: 'layout', done: 1, total: 2 });
      seen.push(drawn());
      return 'done';
    });
    expect(result).toBe('done');
    expect(seen[0]).toContain('0/2 master ivy');
    expect(seen[0]).not.toContain('layout');
    expect(seen[1]).toContain('1/2 layout');
  });

  it('is cleared and lets go of the program when the work fails', async () => {
    const { terminal, drawn } = watched();
    const failing = withProgress(terminal, false, (progress) => {
      progress({ title: 'halves', done: 0, total: 1 });
      throw new Error('out of rubber');
    });
    await expect(failing).rejects.toThrow('out of rubber');
    const before = drawn();
    // A bar that was not stopped would draw itself again, ten times a second, and keep the program alive.
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(drawn()).toBe(before);
  });

  it('is silent when asked, and where nobody watches', async () => {
    const { terminal, drawn } = watched();
    await withProgress(terminal, true, (progress) => progress({ title: 'halves', done: 0, total: 1 }));
    expect(drawn()).toBe('');
    const { bar: _, ...alone } = terminal;
    await withProgress(alone, false, (progress) => progress({ title: 'halves', done: 0, total: 1 }));
    expect(drawn()).toBe('');
  });

  const plan = () =>
    bench.put(
      'plan.yaml',
      'process: rubber\ndisc: { diameter: 100, thickness: 12 }\nsprue: {}\nmasters:\n  button: { length: 9, width: 9, above: 3, below: 1 }\n',
    );

  it('names masters, checks and solids of a build, and keeps off the results', async () => {
    const { terminal, drawn, out } = watched();
    expect(await runProgram(['build', plan(), '--out', bench.path('out')], terminal)).toBe(0);
    for (const title of [
      '0/2 master button',
      'layout and parting surface',
      'center sprue form',
      'mold halves',
      'audit of',
    ])
      expect(drawn()).toContain(title);
    expect(out.join('')).not.toContain('\u2588');
  });

  it('goes with --json, whose output stays JSON, but not with --quiet', async () => {
    const loud = watched();
    await runProgram(['check', plan(), '--json'], loud.terminal);
    expect(loud.drawn()).toContain('master button');
    expect(JSON.parse(loud.out.join('')).schema).toBe(2);
    const hushed = watched();
    await runProgram(['check', plan(), '--quiet'], hushed.terminal);
    expect(hushed.drawn()).toBe('');
  });
});
