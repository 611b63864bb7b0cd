import { existsSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { mastersOutside, startPreview } from '../../src/preview/server/index.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { planPath } from '../plan-files.ts';
import type { Terminal } from '../terminal.ts';

export interface PreviewCommandOptions {
  readonly port?: string;
  readonly root?: string;
}

/** Serves the page until Ctrl-C. `until` ends it otherwise. */
export async function runPreview(
  argument: string | undefined,
  options: PreviewCommandOptions,
  terminal: Terminal,
  until: Promise<void> = interrupted(),
): Promise<ExitCode> {
  const plan = argument === undefined ? undefined : await planPath(argument);
  const port = portOf(options.port);
  const page = pageFolder();
  const also = plan === undefined ? [] : await mastersOutside(plan);
  const preview = await startPreview({
    page,
    port,
    also,
    ...(plan !== undefined && { plan }),
    ...(options.root !== undefined && { root: options.root }),
  }).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'EADDRINUSE')
      throw new Unreadable(`port ${port} is taken; leave --port out for a free one`);
    if (error.code === 'EACCES') throw new Unreadable(`port ${port} may not be used by you`);
    throw error;
  });
  for (const folder of new Set(also.map((path) => dirname(path)))) {
    const count = also.filter((path) => dirname(path) === folder).length;
    terminal.out(
      `${count} ${count === 1 ? 'master' : 'masters'} of ${relative(process.cwd(), folder)} read too.`,
    );
  }
  terminal.out(`${plan ?? 'no plan'} is shown at ${preview.url}\nCtrl-C ends it.`);
  await until;
  await preview.close();
  return exitCode.fine;
}

function interrupted(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}

function portOf(text: string | undefined): number {
  if (text === undefined) return 0;
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65_535) throw new Unreadable(`--port ${text} is no port; use 0 to 65535`);
  return port;
}

/** The built page; found from the source and from the compiled program alike, which lie as deep. */
function pageFolder(): string {
  const folder = fileURLToPath(new URL('../../dist/preview', import.meta.url));
  if (!existsSync(join(folder, 'index.html')))
    throw new Unreadable('the page is not built yet; run npm run page');
  return folder;
}
