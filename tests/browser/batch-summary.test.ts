import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, expect, it } from 'vitest';
import { runCompiled } from '../cli/compiled.ts';
import { workbench } from '../cli/workbench.ts';
import { connectBrowser } from './connect-browser.ts';

const bench = workbench();
let browser: Browser | undefined;
afterAll(() => browser?.close());

const plan = bench.put(
  'form.yaml',
  'process: rubber\ndisc: { diameter: 230, lower: 19, upper: 19 }\nsprue: { hole: 32, draft: 3 }\n',
);
const table = bench.put('three.csv', 'name,disc.diameter\nlarge,12in\nsmall,90\nbad,wide\nmid,200\n');

const names = (page: Page): Promise<string[]> => page.locator('tbody th').allTextContents();

/** What axe-core finds that shuts somebody out. */
async function faults(page: Page): Promise<string[]> {
  await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; impact: string | null }[] }> };
    };
    const { violations } = await axe.run();
    return violations.filter(({ impact }) => impact !== 'minor').map(({ id }) => id);
  });
}

it('the summary opens from disk, shows its pictures, sorts by keys, and is legible by day and by night', async () => {
  await runCompiled(
    ...['batch', plan, '--table', table, '--out', bench.path('out'), '--workers', '1'],
    ...['--only', 'sprue-form', '--formats', 'stl', 'overview'],
  );
  browser = await connectBrowser();
  for (const colorScheme of ['light', 'dark'] as const) {
    const page = await browser.newPage({ colorScheme, viewport: { width: 1400, height: 700 } });
    const asked: string[] = [];
    page.on('request', (request) => asked.push(new URL(request.url()).protocol));
    await page.goto(pathToFileURL(join(bench.path('out'), 'form-batch/batch-summary.html')).href);
    expect(await names(page)).toEqual(['large', 'small', 'bad', 'mid']);
    const widths = () =>
      page
        .locator('img')
        .evaluateAll((images) => images.map((image) => (image as HTMLImageElement).naturalWidth));
    // They are loaded as they come near, after the page itself.
    await expect.poll(widths, { timeout: 60_000 }).toEqual([480, 480, 480]);
    const byDiameter = page.getByRole('button', { name: 'disc.diameter' });
    await byDiameter.focus();
    await page.keyboard.press('Enter');
    expect(await names(page)).toEqual(['small', 'mid', 'large', 'bad']);
    await page.keyboard.press('Space');
    expect(await names(page)).toEqual(['bad', 'large', 'mid', 'small']);
    expect(await page.locator('th[aria-sort=descending]').allTextContents()).toEqual(['disc.diameter']);
    expect(await faults(page)).toEqual([]);
    expect(new Set(asked)).toEqual(new Set(['file:']));
    await page.close();
  }
});

// ISO 216 and ANSI/ASME Y14.1, landscape, less the margins of the page's own style: 10 mm each side; 96 px to the inch.
it.each([
  ['A4', 297],
  ['Letter', 279.4],
])('shows all rows and columns printed on %s', async (format, width) => {
  browser ??= await connectBrowser();
  const across = Math.floor(((width - 20) / 25.4) * 96);
  const page = await browser.newPage({ colorScheme: 'dark', viewport: { width: across, height: 600 } });
  await page.goto(pathToFileURL(join(bench.path('out'), 'form-batch/batch-summary.html')).href);
  await page.emulateMedia({ media: 'print' });
  const { right, hidden } = await page.evaluate(() => {
    const table = document.querySelector('table');
    const sheet = document.querySelector('.sheet');
    const cells = [...document.querySelectorAll('th, td')];
    return {
      right: Math.max(...cells.map((cell) => cell.getBoundingClientRect().right)),
      hidden: (table?.getBoundingClientRect().height ?? 1e9) - (sheet?.getBoundingClientRect().height ?? 0),
    };
  });
  expect(right).toBeLessThanOrEqual(across);
  expect(hidden).toBeLessThan(1);
  const pdf = await page.pdf({ format, landscape: true, preferCSSPageSize: false });
  expect(pdf.length).toBeGreaterThan(1000);
  await page.close();
});
