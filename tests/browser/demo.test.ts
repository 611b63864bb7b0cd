import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { FromWorker } from '../../src/preview/worker/messages.ts';
import { keepPicture, shop } from './shop.ts';

const { serve, show } = shop();

/** What a worker did, as the page saw it: ms since the page was asked for. */
interface Seen {
  readonly worker: string;
  readonly what: FromWorker['kind'] | 'ended';
  readonly edit: number;
  readonly at: number;
}

/** Writes down all that the page's workers say, and when they are ended. */
async function watchWorkers(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const seen: Seen[] = [];
    Object.assign(globalThis, { seen });
    globalThis.Worker = class extends Worker {
      private readonly worker: string;
      constructor(address: string | URL, options: WorkerOptions = {}) {
        super(address, options);
        this.worker = options.name ?? '';
        this.addEventListener('message', ({ data }: MessageEvent<FromWorker>) =>
          this.note(data.kind, data.edit),
        );
      }

      override terminate(): void {
        this.note('ended', -1);
        super.terminate();
      }

      private note(what: Seen['what'], edit: number): void {
        seen.push({ worker: this.worker, what, edit, at: performance.now() });
      }
    };
  });
}

const seenIn = (page: Page): Promise<Seen[]> =>
  page.evaluate(() => (globalThis as unknown as { seen: Seen[] }).seen);

const oneOf = (page: Page, worker: string, what: string, edit: number): Promise<unknown> =>
  page.waitForFunction(
    ([by, kind, number]) =>
      (globalThis as unknown as { seen: Seen[] }).seen.some(
        (one) => one.worker === by && one.what === kind && one.edit === number,
      ),
    [worker, what, edit] as const,
  );

/** When the picture first had so many triangles, and was on the screen: ms since the page was asked for. */
const drawnWith = (page: Page, triangles: number): Promise<number> =>
  page.evaluate(async (least) => {
    const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
    while (!(Number(document.querySelector('canvas')?.dataset.triangles) > least)) await frame();
    await frame();
    await frame();
    return performance.now();
  }, triangles);

describe('the demo', () => {
  let page: Page;
  let complaints: readonly string[];
  let shown: number;
  beforeAll(async () => {
    const { url } = await serve('presets/hedgerow');
    ({ page, complaints } = await show(url, {}, watchWorkers));
    shown = (await drawnWith(page, 20_000)) / 1000;
  });

  it('leaves off what was done for an older edit', async () => {
    await oneOf(page, 'build', 'step', 1);
    await page.getByRole('button', { name: 'Move by hand' }).click();
    await page.getByRole('button', { name: /ivy-leaf-1$/ }).focus();
    for (const edit of [2, 3]) {
      await page.keyboard.press('ArrowRight');
      await oneOf(page, 'layout', 'laid', edit);
      await oneOf(page, 'build', 'step', edit);
    }
    const seen = await seenIn(page);
    const answers = new Set(['laid', 'solids', 'report', 'built']);
    // Answers come in the order of the edits they belong to.
    const edits = seen.filter(({ what }) => answers.has(what)).map(({ edit }) => edit);
    expect(edits).toEqual([...edits].sort((a, b) => a - b));
    const changed = await page.evaluate(() =>
      performance.getEntriesByName('let go').map(({ startTime }) => startTime),
    );
    for (const [i, edit] of [2, 3].entries()) {
      const stop = seen.find(
        ({ worker, what, at }) =>
          worker === 'build' && at > changed[i] && (what === 'left' || what === 'ended'),
      );
      if (!stop) throw new Error(`the build worker did not leave off for edit ${edit}`);
      const later = seen.filter((one) => one.worker === 'build' && one.at > stop.at && one.what !== 'ended');
      for (const one of later) expect(one.edit).toBeGreaterThanOrEqual(edit);
      const how = stop.what === 'left' ? 'left off by itself' : 'had to be ended';
      console.log(
        `work for an older edit stopped ${(stop.at - changed[i]).toFixed(0)} ms after the edit: ${how}`,
      );
    }
    // What was ended does not go on unseen: one worker of each kind is left.
    await expect.poll(() => page.workers().length, { timeout: 20_000 }).toBe(2);
    await page.getByRole('button', { name: 'leave off' }).click();
    const told = (await seenIn(page)).length;
    await page.waitForTimeout(1500);
    const after = (await seenIn(page)).slice(told);
    expect(after.filter(({ worker }) => worker === 'build')).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('is drawn with few enough triangles to turn smoothly, soon after its page was asked for', async () => {
    const triangles = Number(await page.locator('canvas').getAttribute('data-triangles'));
    expect(triangles).toBeLessThan(200_000);
    const [disc, laid] = await page.evaluate(() =>
      ['disc laid', 'mold laid'].map((name) => performance.getEntriesByName(name)[0].startTime / 1000),
    );
    await keepPicture(page, 'demo-laid');
    console.log(
      `the demo is seen ${shown.toFixed(1)} s after the page was asked for ` +
        `(aim 3; its disc ${disc.toFixed(1)} s, masters laid ${laid.toFixed(1)} s)`,
    );
    await page.context().close();
  });
});
