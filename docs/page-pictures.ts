/**
 * Takes the README's pictures of the page with the demo in it: `tsx docs/page-pictures.ts`, after `npm run compile` and
 * `npm run page`. Writes page-mold.jpg, page-cut.jpg and page-open-book.jpg beside itself.
 */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { openBrowser } from '../tests/browser/browser.ts';

const root = fileURLToPath(new URL('../', import.meta.url));
const size = { width: 1280, height: 720 };
/** Software draws the demo and makes its solids in minutes where others work too, ms. */
const patience = 900_000;

const press = (page: Page, name: string): Promise<void> =>
  page.getByRole('button', { name, exact: true }).click();

const shots: readonly { readonly name: string; pose(page: Page): Promise<void> }[] = [
  { name: 'page-mold', pose: (page) => press(page, 'over the shoulder') },
  {
    name: 'page-cut',
    pose: async (page) => {
      await page.getByRole('navigation').getByRole('button', { name: 'Thickness' }).click();
      await page.getByLabel('Cut between').selectOption('y');
    },
  },
  {
    name: 'page-open-book',
    pose: async (page) => {
      await page.getByLabel('Cut between').selectOption('none');
      await page.getByRole('navigation').getByRole('button', { name: 'Lay out' }).click();
      await press(page, 'open book');
    },
  },
];

/** The address the command serves the demo at. */
function addressOf(preview: ReturnType<typeof spawn>): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    preview.stdout?.on('data', (part: Buffer) => {
      said += part.toString();
      const url = /http:\/\/\S+/.exec(said)?.[0];
      if (url) resolve(url);
    });
    preview.on('exit', () => reject(new Error(`preview ended: ${said}`)));
  });
}

const preview = spawn(process.execPath, ['dist/cli/main.js', 'preview', 'presets/hedgerow'], { cwd: root });
const browser = await openBrowser();
try {
  const page = await browser.newPage({ viewport: size });
  page.setDefaultTimeout(patience);
  await page.goto(await addressOf(preview));
  await page.waitForFunction(() => performance.getEntriesByName('mold built').length > 0);
  for (const { name, pose } of shots) {
    await pose(page);
    // Two frames: one in which the change is drawn, and the next in which it is seen.
    await page.evaluate(
      () => new Promise((seen) => requestAnimationFrame(() => requestAnimationFrame(seen))),
    );
    await page.screenshot({ path: `${root}docs/${name}.jpg`, type: 'jpeg', quality: 84 });
  }
} finally {
  await browser.close();
  preview.kill('SIGINT');
}
