import { open, rm, stat } from 'node:fs/promises';
import { setTimeout as wait } from 'node:timers/promises';

/** How long another writer is waited for, and how old the sign of one may get that was killed, ms. */
const patience = 4000;
const stale = 10_000;
const glance = 20;

/**
 * Does something with a file while no other discwright does: a sign beside it (`.NAME.busy`) tells the others, also in
 * other processes. Throws where another keeps it too long.
 */
export async function oneAtATime<T>(sign: string, work: () => Promise<T>): Promise<T> {
  await putUp(sign);
  try {
    return await work();
  } finally {
    await rm(sign, { force: true });
  }
}

async function putUp(sign: string): Promise<void> {
  const end = Date.now() + patience;
  for (;;) {
    try {
      await (await open(sign, 'wx')).close();
      return;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST' || Date.now() > end) throw error;
    }
    const since = await stat(sign).then(
      ({ mtimeMs }) => mtimeMs,
      () => undefined,
    );
    if (since !== undefined && Date.now() - since > stale) await rm(sign, { force: true });
    else await wait(glance);
  }
}
