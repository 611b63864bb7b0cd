import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { run } from '../cli/workbench.ts';
import { onScreen } from './drag.ts';
import { buttons, drawn, keepPicture, marked, shop } from './shop.ts';

// One page for all: what is entered is held to the log on disk, what is shown to the command's report.

const { put, path, openSheet } = shop();

const bench = `gates: [{ placements: [button], width: 1 mm, depth: 1 mm }]
vents: []
alloy: { name: pewter type 2, liquidus: 240, pour: 285 }
spin: { speed: 400 }
`;
const plan = put(
  'trials/plan.yaml',
  buttons.replace('below: 1 }', 'below: 1, entry: { rim-side: { x: 6, y: 0 } } }') + bench,
);
const log = path('trials/plan.trials.yaml');
const logged = () => readFileSync(log, 'utf8');

let page: Page;
let complaints: readonly string[];
beforeAll(async () => {
  ({ page, complaints } = await openSheet(plan, 'Trials'));
  await drawn(page);
});

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
const noted = (pour: number) => page.getByText(`Pour ${pour} noted in`).waitFor();
const cell = (id: string) => page.getByRole('button', { name: new RegExp(`^${id}: `) });

it('notes a pour that is all good by one key, with what the plan means to do', async () => {
  await page.locator('.yield-cell').first().focus();
  await page.keyboard.press('g');
  await noted(1);
  expect(logged()).toMatch(/- pour: 1\n {4}metal: 285 C\n {4}speed: 400 rpm\n {4}others: good/);
});

it('notes where a casting stayed short: the place that is named nearby, else the place of the disc', async () => {
  // Beside the outer end of the first, and of the second its middle.
  await page.mouse.click(...(await onScreen(page, [37, 0.5])));
  const [x, y] = [32 * Math.cos((2 * Math.PI) / 3), 32 * Math.sin((2 * Math.PI) / 3)];
  await page.mouse.click(...(await onScreen(page, [x, y])));
  await page.getByLabel('Share of button-1 that is missing').fill('20 %');
  await page.getByLabel('Mold', { exact: true }).fill('60 C');
  await keepPicture(page, 'trials-entered');
  await button('All others good').click();
  await noted(2);
  expect(logged()).toContain('button-1: { came: short, where: rim-side, missing: 20 % }');
  const [, atX, atY] = /button-2: { came: short, where: { x: (\S+) mm, y: (\S+) mm } }/.exec(logged()) ?? [];
  expect(Math.hypot(Number(atX) - x, Number(atY) - y)).toBeLessThan(0.5);
});

it('notes a fault by keys alone', async () => {
  await cell('button-3').focus();
  await page.keyboard.press('2');
  await page.keyboard.press('Enter');
  await page.locator('.marks').getByText('button-3 flash').waitFor();
  await page.keyboard.press('1');
  await page.keyboard.press('Enter');
  await page.locator('.marks').getByText('button-3 short').waitFor();
  expect(await cell('button-3').getAttribute('aria-pressed')).toBe('true');
  await page.keyboard.press('g');
  await noted(3);
  expect(logged()).toMatch(/- pour: 3[\s\S]*button-3: short/);
});

it('takes the last one back', async () => {
  const before = logged();
  await button('Take back pour 3').click();
  await button('Take back pour 2').waitFor();
  expect(logged()).not.toContain('pour: 3');
  await cell('button-3').press('Enter');
  await page.locator('.marks').getByText('button-3 short').waitFor();
  await page.keyboard.press('g');
  await noted(3);
  expect(logged()).toBe(before);
});

it('loses nothing where somebody else writes meanwhile, and keeps their comments', async () => {
  await cell('button-1').press('Enter');
  await button('All others good').waitFor();
  const theirs = `${logged()}  - { pour: 4, cavities: { button-1: short, button-2: short }, others: good } # theirs\n`;
  // Between two looks of the server at the file.
  await page.evaluate(() => {
    const { fetch: ask } = globalThis;
    globalThis.fetch = (to, how) =>
      to === 'trials' && how === undefined ? new Promise(() => {}) : ask(to, how);
    Object.assign(globalThis, { ask });
  });
  writeFileSync(log, theirs);
  await button('All others good').click();
  await page.getByRole('alert').getByText('Nothing of yours is lost').waitFor();
  expect(logged()).toBe(theirs);
  await page.evaluate(() => {
    globalThis.fetch = (globalThis as unknown as { ask: typeof fetch }).ask;
  });
  await page.getByRole('alert').getByRole('button', { name: 'close' }).click();
  await button('All others good').click();
  await noted(5);
  expect(logged()).toContain('# theirs');
  expect(logged()).toMatch(/- pour: 5[\s\S]*button-1: short/);
});

it('shows what the command reports, and writes what it proposes into the plan and out again', async () => {
  await button('Hold against the forecast').click();
  await page.waitForFunction(() => performance.getEntriesByName('forecast told').length > 0);
  const report = JSON.parse((await run('pour', plan, '--report', '--json')).out) as {
    byCavity: Record<string, { share: number; of: number }>;
    advice: { tries: { code: string }[] };
  };
  for (const [id, { share, of }] of Object.entries(report.byCavity))
    expect(await cell(id).getAttribute('aria-label')).toBe(`${id}: ${Math.round(share * of)}/${of} good`);
  const tries = page.locator('.tries > li');
  expect(await tries.count()).toBe(report.advice.tries.length);
  const opens = report.advice.tries.findIndex(({ code }) => code === 'try.open-gate');
  expect(opens).toBeGreaterThanOrEqual(0);
  await keepPicture(page, 'trials-next');
  const { out } = await run('pour', plan, '--take', String(opens + 1));
  const byCommand = readFileSync(plan, 'utf8');
  expect(out).toContain('written into');
  writeFileSync(plan, byCommand.replace(/gates: .*/, bench.split('\n')[0]));
  await marked(page, 'mold built', 2);
  await button('Hold against the forecast').click();
  await page.waitForFunction(() => performance.getEntriesByName('forecast told').length > 1);
  await tries.nth(opens).getByRole('button', { name: 'Write into the plan' }).click();
  await button('Save plan').click();
  await button('Saved').waitFor();
  expect(readFileSync(plan, 'utf8')).toBe(byCommand);
  await page.keyboard.press('Control+z');
  await button('Save plan').waitFor();
});

it('shuts nobody out, fits a tablet, and without a complaint of the page', async () => {
  await page.setViewportSize({ width: 820, height: 1180 });
  await drawn(page);
  await keepPicture(page, 'trials-tablet');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(820);
  await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  const faults = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; impact: string | null }[] }> };
    };
    return (await axe.run()).violations.map(({ id, impact }) => `${impact} ${id}`);
  });
  expect(faults).toEqual([]);
  // The refused writing, as the browser tells of every answer of that kind.
  expect(complaints.filter((one) => !one.includes('409'))).toEqual([]);
});
