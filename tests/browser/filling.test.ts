import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import type { Report } from '../../src/findings/index.ts';
import { run } from '../cli/workbench.ts';
import { onScreen } from './drag.ts';
import { buttons, drawn, keepPicture, shop } from './shop.ts';

// One page for all: what is listed is held to the command's report, what is written to the plan's file.

const { put, openSheet } = shop();

const bench = `gates:
  - { placements: [button-1, button-2] } # two of them
  - { placements: [button-3], entry: outer, path: { through: [{ radius: 24, angle: 30 }, { radius: 43, angle: 14 }] } }
alloy: { name: pewter type 2, liquidus: 240, pour: 285 }
spin: { speed: 400 }
`;
const plan = put('filling/plan.yaml', buttons + bench);
const onDisk = () => readFileSync(plan, 'utf8');

let page: Page;
let complaints: readonly string[];
beforeAll(async () => {
  ({ page, complaints } = await openSheet(plan, 'Filling'));
  await filled(1);
  await page.getByRole('button', { name: 'from above' }).click();
  await drawn(page);
});

const filled = (times: number): Promise<unknown> =>
  page.waitForFunction((least) => performance.getEntriesByName('filling shown').length >= least, times);
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });

it('lists the air of the command’s report, and shows its place', async () => {
  const report = JSON.parse((await run('check', plan, '--json')).out) as Report;
  const air = report.findings.filter(({ code }) => code === 'fill.air-stays');
  expect(air.length).toBeGreaterThan(0);
  const rows = page.locator('.pockets li');
  expect(await rows.count()).toBe(air.length);
  const most = report.figures.find(
    ({ name, subject }) => name === 'fill.air' && subject === 'button-3',
  )?.value;
  expect(await rows.first().textContent()).toContain(`${most?.toFixed(1)} mm3 stay`);
  const before = await page.locator('canvas').screenshot();
  await rows.first().getByRole('button').press('Enter');
  await drawn(page);
  expect(Buffer.compare(await page.locator('canvas').screenshot(), before)).not.toBe(0);
  await button('from above').click();
});

it('is filled step by step by keys where nothing is to move by itself', async () => {
  const slider = page.getByRole('slider', { name: 'How full the cavities are' });
  const full = await page.locator('canvas').screenshot();
  await button('Play').press('Enter');
  expect(await slider.getAttribute('aria-valuetext')).toBe('10 % full');
  await drawn(page);
  expect(Buffer.compare(await page.locator('canvas').screenshot(), full)).not.toBe(0);
  await slider.press('End');
  expect(await slider.getAttribute('aria-valuetext')).toBe('100 % full');
});

it('moves an entry by the pointer, tried meanwhile, and writes it alone', async () => {
  const before = onDisk();
  await page.locator('.all-channels summary').click();
  await button('gate-button-1').click();
  await drawn(page);
  await page.mouse.move(...(await onScreen(page, [26, 0])));
  await page.mouse.down();
  await page.mouse.move(...(await onScreen(page, [28, 4])), { steps: 4 });
  await page.locator('[data-took]').waitFor();
  await keepPicture(page, 'filling-moved');
  await page.mouse.up();
  await button('Save plan').click();
  await button('Saved').waitFor();
  expect(
    onDisk()
      .split('\n')
      .filter((line) => !before.includes(line)),
  ).toEqual([
    expect.stringMatching(
      /^ {2}- { placements: \[button-1, button-2\], entry: { x: -[\d.]+, y: [\d.]+ } } # two of them$/,
    ),
  ]);
  await filled(2);
});

it('moves its end by keys, and undo takes that back', async () => {
  const text = onDisk();
  const end = page.getByRole('button', { name: 'End at the well' });
  await end.press('Shift+ArrowUp');
  await button('Save plan').click();
  await button('Saved').waitFor();
  expect(onDisk()).toMatch(
    /button-2\], entry: .*, path: { through: \[{ radius: [\d.]+, angle: [\d.]+ }\] } } # two/,
  );
  await page.keyboard.press('Control+z');
  await button('Save plan').click();
  await button('Saved').waitFor();
  expect(onDisk()).toBe(text);
  await filled(3);
});

it('proposes anew for what nobody chose', async () => {
  // Undone as far as it goes: the first two are as they were.
  await page.keyboard.press('Control+z');
  await filled(4);
  await button('Propose for all').click();
  await page.getByText('Written into the plan').waitFor();
  await button('Save plan').click();
  await button('Saved').waitFor();
  expect(onDisk()).not.toContain('[button-1, button-2]');
  expect(onDisk()).toMatch(/placements: \[button\].*entry: .* # .* side/);
  expect(onDisk()).toContain('entry: outer, path: { through:');
  await filled(5);
  await keepPicture(page, 'filling-proposed');
});

it('shuts nobody out, and without a complaint of the page', async () => {
  await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  const faults = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; impact: string | null }[] }> };
    };
    return (await axe.run()).violations.map(({ id, impact }) => `${impact} ${id}`);
  });
  expect(faults).toEqual([]);
  expect(complaints).toEqual([]);
});
