import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContextOptions, Download, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { connectBrowser } from './connect-browser.ts';

/** The compiled program and page: `npm test` makes them before the tests run. */
const root = fileURLToPath(new URL('../../', import.meta.url));
const program = join(root, 'dist/cli/main.js');
export const onePage = join(root, 'dist/preview-one-file/discwright.html');
/** Pictures for people to look at, kept by CI. */
const pictures = join(root, 'out/browser');

/** Slow machines draw by software: ms. */
const patience = 120_000;

export interface Shown {
  readonly page: Page;
  /** What the page complained of: must stay empty. */
  readonly complaints: readonly string[];
}

/** A folder with plans, the real command serving them, and a browser, for one test file; all gone at its end. */
export function shop() {
  const folder = mkdtempSync(join(tmpdir(), 'shop-'));
  const running = new Set<ChildProcess>();
  let browser: Browser;
  beforeAll(async () => {
    if (!existsSync(join(root, 'dist/preview/index.html')) || !existsSync(program)) {
      throw new Error('the page is not built: npm run compile && npm run page');
    }
    mkdirSync(pictures, { recursive: true });
    browser = await connectBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    for (const child of running) child.kill('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
  });

  const path = (name: string): string => join(folder, name);

  /** Starts `discwright preview` and gives its address once it says so. */
  const serve = (...args: string[]): Promise<{ url: string; child: ChildProcess }> =>
    new Promise((resolve, reject) => {
      const child = spawn(process.execPath, [program, 'preview', ...args], { cwd: root });
      running.add(child);
      let said = '';
      child.stdout.on('data', (part: Buffer) => {
        said += part.toString();
        const url = /http:\/\/\S+/.exec(said)?.[0];
        if (url) resolve({ url, child });
      });
      child.stderr.on('data', (part: Buffer) => {
        said += part.toString();
      });
      child.on('exit', (code) => {
        running.delete(child);
        reject(new Error(`preview ended with ${code}: ${said}`));
      });
    });

  /** Opens an address in a fresh context of its own; `before` may put something in the page's way. */
  const show = async (
    url: string,
    options: BrowserContextOptions = {},
    before?: (page: Page) => Promise<void>,
  ): Promise<Shown> => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 720 }, ...options });
    const page = await context.newPage();
    page.setDefaultTimeout(patience);
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(String(error)));
    await before?.(page);
    await page.goto(url);
    return { page, complaints };
  };

  /** Serves a plan and opens one sheet of its page once the mold is built; nothing moves by itself there. */
  const openSheet = async (plan: string, sheet: string): Promise<Shown> => {
    const { url } = await serve(plan);
    const shown = await show(url, { reducedMotion: 'reduce' });
    await marked(shown.page, 'mold built');
    shown.page.setDefaultTimeout(20_000);
    await shown.page.getByRole('navigation').getByRole('button', { name: sheet }).click();
    return shown;
  };

  return {
    folder,
    path,
    openSheet,
    put(name: string, content: string | Uint8Array): string {
      mkdirSync(dirname(path(name)), { recursive: true });
      writeFileSync(path(name), content);
      return path(name);
    },
    serve,
    show,
  };
}

/** Waits until the page has said a mark so many times. */
export const marked = (page: Page, mark: 'mold laid' | 'mold built', times = 1): Promise<unknown> =>
  page.waitForFunction(([name, least]) => performance.getEntriesByName(name).length >= least, [
    mark,
    times,
  ] as const);

/** What was downloaded. */
export async function bytesOf(download: Download): Promise<Uint8Array> {
  return new Uint8Array(Buffer.concat(await (await download.createReadStream()).toArray()));
}

/** Waits for the picture to be drawn after the last change. */
export const drawn = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise<void>((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve()))),
  );

export const keepPicture = async (page: Page, name: string): Promise<void> => {
  await drawn(page);
  await page.screenshot({ path: join(pictures, `${name}.png`) });
};

/** Distinct colors in the picture, counted on every fourth pixel of a screenshot. */
export async function colorsIn(page: Page): Promise<number> {
  const shot = (await page.locator('canvas').screenshot()).toString('base64');
  return page.evaluate(async (png) => {
    const image = new Image();
    image.src = `data:image/png;base64,${png}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const pen = canvas.getContext('2d');
    if (!pen) return 0;
    pen.drawImage(image, 0, 0);
    const { data } = pen.getImageData(0, 0, image.width, image.height);
    const colors = new Set<number>();
    for (let i = 0; i < data.length; i += 16) colors.add((data[i] << 16) | (data[i + 1] << 8) | data[i + 2]);
    return colors.size;
  }, shot);
}

/** A small disc with three buttons: solids in a second or two, and no mesh file. */
export const buttons = `# Buttons from a hedge.
title: Oak buttons
process: rubber
disc: { diameter: 100, thickness: 12 }
sprue: {}
parting: { surface: flat }
masters:
  button: { length: 12, width: 12, above: 3, below: 1 }
placements:
  - { master: button, ring: { count: 3, radius: 32 } } # three of them
registration:
  flex: 0.1
  bosses:
    - { kind: cap nut, size: M6, at: { radius: 38, angle: 60 } }
    - { kind: cap nut, size: M5, at: { radius: 38, angle: 180 } }
    - { kind: cap nut, size: M6, at: { radius: 38, angle: 290 } }
fixture: { chordError: 0.1 }
tabs:
  - { angle: 145, width: 12 }
notches:
  - { angle: 30 }
`;
