import { readFileSync } from 'node:fs';
import { describe, expect, it, test, vi } from 'vitest';
import { runProgram } from '../../cli/program.ts';
import { processTerminal } from '../../cli/terminal.ts';
import { version } from '../../cli/version.ts';
import { run } from './workbench.ts';

const manifest = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));

describe('the program', () => {
  it('has the version of the package', async () => {
    expect(version).toBe(manifest.version);
    expect(await run('--version')).toEqual({ code: 0, out: manifest.version, err: '' });
  });

  it('explains itself and its exit codes', async () => {
    const { code, out, err } = await run('--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const command of ['new', 'inspect', 'check', 'gate', 'build', 'batch'])
      expect(out).toMatch(new RegExp(`^ {2}${command} `, 'm'));
    expect(out).toMatch(/0 fine.*1 a finding says stop.*2 the input cannot be read.*3 a fault of discwright/);
    expect(out).toContain('Examples:');
  });

  test.each(['new', 'inspect', 'check', 'gate', 'build', 'batch'])(
    '%s --help gives an example that begins with it',
    async (command) => {
      const { code, out } = await run(command, '--help');
      expect(code).toBe(0);
      expect(out).toMatch(new RegExp(`Examples?:\\n {2}discwright ${command} `));
      expect(out).toMatch(/Exit codes/);
    },
  );

  it('shows the help and exits 2 when nothing is asked', async () => {
    const { code, out, err } = await run();
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^Usage: discwright/);
  });

  test.each([
    [['bild', 'plan.yaml'], /unknown command 'bild'[\s\S]*build/],
    [['build'], /missing required argument 'plan'/],
    [['build', 'plan.yaml', '--outt', 'x'], /unknown option '--outt'[\s\S]*--out/],
    [['check', 'a.yaml', 'b.yaml'], /too many arguments/],
    [['inspect'], /missing required argument 'files'/],
    [['inspect', 'a.stl', '--unit', 'furlong'], /--unit furlong is not known; use one of/],
  ])('%j is exit 2 with a hint and no stack trace', async (args, says) => {
    const { code, out, err } = await run(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
    expect(err).not.toMatch(/\n\s+at /);
  });

  it('calls a fault of its own one: exit 3, one line, no stack trace', async () => {
    const lines: string[] = [];
    const broken = {
      out: () => {
        throw new TypeError('the printer is on fire');
      },
      err: (text: string) => void lines.push(text),
      width: 100,
    };
    expect(await runProgram(['new'], broken)).toBe(3);
    expect(lines).toEqual([
      'discwright: a fault of the program: the printer is on fire. Please report it with the plan; DISCWRIGHT_DEBUG=1 shows more.',
    ]);
  });
});

describe('the real terminal', () => {
  const write = (env: Record<string, string>, isTTY: boolean): string => {
    const written: string[] = [];
    const spy = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
      written.push(String(text));
      return true;
    });
    const before = Object.getOwnPropertyDescriptor(process.stdout, 'isTTY');
    for (const name of ['NO_COLOR', 'FORCE_COLOR', 'CI', 'TERM']) vi.stubEnv(name, env[name]);
    Object.defineProperty(process.stdout, 'isTTY', { value: isTTY, configurable: true });
    try {
      processTerminal().out('\u001b[31mstop\u001b[39m');
    } finally {
      spy.mockRestore();
      vi.unstubAllEnvs();
      if (before) Object.defineProperty(process.stdout, 'isTTY', before);
      else Reflect.deleteProperty(process.stdout, 'isTTY');
    }
    return written.join('');
  };
  const colored = '\u001b[31mstop\u001b[39m\n';

  it('shows color on a terminal only, and obeys NO_COLOR', () => {
    expect(write({ TERM: 'xterm' }, true)).toBe(colored);
    expect(write({ TERM: 'xterm' }, false)).toBe('stop\n');
    expect(write({ CI: 'true' }, false)).toBe('stop\n');
    expect(write({ TERM: 'xterm', NO_COLOR: '1' }, true)).toBe('stop\n');
    expect(write({ TERM: 'dumb' }, true)).toBe('stop\n');
    expect(write({ FORCE_COLOR: '1' }, false)).toBe(colored);
  });
});
