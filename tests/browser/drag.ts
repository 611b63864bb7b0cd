import type { Page } from 'playwright-core';
import { drawn } from './shop.ts';

// A hand on the disc: places are given in mm from its center, as seen from above.

type Place = readonly [number, number];

/** Where a place of a disc of this diameter is on the screen, from the outline that is seen from above. */
export async function onScreen(page: Page, [x, y]: Place, diameter = 100): Promise<[number, number]> {
  const at = await page.evaluate(
    ([px, py, across]) => {
      const canvas = document.querySelector('canvas');
      if (!canvas) throw new Error('no picture');
      const box = canvas.getBoundingClientRect();
      const [cx, cy, scale] = (canvas.dataset.disc ?? '').split(' ').map(Number);
      return [box.left + cx + px * scale, box.top + cy - py * scale, across];
    },
    [x, y, diameter] as const,
  );
  return [at[0], at[1]];
}

/** Takes hold of a thing: it is chosen then. */
export async function pickUp(page: Page, id: string, place: Place, diameter = 100): Promise<void> {
  // The canvas says where the disc is as it is drawn: a view just asked for is not yet that.
  await drawn(page);
  await page.mouse.move(...(await onScreen(page, place, diameter)));
  await page.mouse.down();
  await page.getByRole('region', { name: `Chosen: ${id}` }).waitFor();
}

export const slide = (page: Page, place: Place): Promise<void> => downTo(page, place, 6);

/** Moves what is held there, in so many steps. */
export async function downTo(page: Page, place: Place, steps: number, diameter = 100): Promise<void> {
  await page.mouse.move(...(await onScreen(page, place, diameter)), { steps });
  await page.locator('.nearby:not([data-error="0"])').waitFor();
}

/** Lets go, and waits for the exact figures. */
export async function release(page: Page): Promise<void> {
  await page.mouse.up();
  await page.locator('.nearby[data-error="0"]').waitFor();
}

export interface Watched {
  /** From each move of the hand to its figures, ms. */
  readonly updates: readonly number[];
  /** What of each was computing in the worker. */
  readonly computing: readonly number[];
  /** Longest task of the page, ms, with and without what is done in drawing frames. */
  readonly longest: number;
  readonly longestOwn: number;
}

/** Watches the page's main thread while something is done: tasks over 50 ms, and how much of each was drawing. */
export async function watchTasks(page: Page, doing: () => Promise<void>): Promise<Watched> {
  await page.evaluate(() => {
    const seen = {
      tasks: [] as [number, number][],
      frames: [] as [number, number][],
      updates: [] as number[],
      computing: [] as number[],
    };
    Object.assign(globalThis, { seen });
    new PerformanceObserver((list) => {
      for (const { startTime, duration } of list.getEntries()) seen.tasks.push([startTime, duration]);
    }).observe({ entryTypes: ['longtask'] });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        if (entry.name !== 'hand to figures' || !('detail' in entry)) continue;
        seen.updates.push(entry.duration);
        seen.computing.push(Number(entry.detail));
      }
    }).observe({ entryTypes: ['measure'] });
    const ask = globalThis.requestAnimationFrame.bind(globalThis);
    globalThis.requestAnimationFrame = (frame) =>
      ask((time) => {
        const start = performance.now();
        frame(time);
        seen.frames.push([start, performance.now() - start]);
      });
  });
  // A task known to be long, so that an observer that sees nothing is found out.
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        setTimeout(() => {
          for (const start = performance.now(); performance.now() - start < 80; );
          setTimeout(resolve, 200);
        });
      }),
  );
  const control = await page.evaluate(() => {
    const { seen } = globalThis as unknown as { seen: { tasks: [number, number][] } };
    return seen.tasks.splice(0).length;
  });
  if (control === 0) throw new Error('the browser tells of no long tasks');
  await doing();
  return page.evaluate(() => {
    const { seen } = globalThis as unknown as {
      seen: {
        tasks: [number, number][];
        frames: [number, number][];
        updates: number[];
        computing: number[];
      };
    };
    const own = seen.tasks.map(([start, long]) => {
      const drawn = seen.frames
        .filter(([at]) => at >= start && at < start + long)
        .reduce((sum, [, took]) => sum + took, 0);
      return long - drawn;
    });
    return {
      updates: seen.updates,
      computing: seen.computing,
      longest: Math.max(0, ...seen.tasks.map(([, long]) => long)),
      longestOwn: Math.max(0, ...own),
    };
  });
}
