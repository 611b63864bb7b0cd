import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { FigureName, Report } from '../../src/findings/index.ts';
import { run } from '../cli/workbench.ts';
import { buttons, drawn, keepPicture, marked, shop } from './shop.ts';

// Every number on the sheets of the bench steps is held to the command's own report on the same plan; every length in
// a drawing to the ratio of the two figures it stands for.

const { put, serve, show } = shop();

const bench = `rubber: { density: 1.15 g/cm3 }
alloy: { name: pewter type 2, pour: 285 }
machine: { plateMass: 2 kg, closingForce: 1 kN, maxSpeed: 1000 }
spin: { speed: 400, grade: G6.3, shot: 30 g, detail: 0.1 }
`;
/** Two buttons, which leave one side heavy. */
const two = `  - { master: button, at: { radius: 32, angle: 0 } }
  - { master: button, at: { radius: 32, angle: 120 } }
`;
const plan = put('shop/plan.yaml', buttons.replace(/ {2}- { master: button.*\n/, two) + bench);

let page: Page;
let complaints: readonly string[];
let report: Report;
beforeAll(async () => {
  const { url } = await serve(plan);
  ({ page, complaints } = await show(url));
  report = JSON.parse((await run('check', plan, '--json')).out) as Report;
  await marked(page, 'mold built');
  page.setDefaultTimeout(20_000);
});

const step = (title: string): Promise<void> =>
  page.getByRole('navigation').getByRole('button', { name: title }).click();

function figure(name: FigureName, subject?: string): number {
  const found = report.figures.find(
    (one) => one.name === name && (subject === undefined || one.subject === subject),
  );
  if (!found) throw new Error(`the command reports no ${name} of ${subject}`);
  return found.value;
}

/** A number among an element's attributes. */
const attribute = async (selector: string, name: string): Promise<number> =>
  Number(await page.locator(selector).first().getAttribute(name));

describe('the sheet on thickness', () => {
  it('draws heights and covers as the command has them', async () => {
    await step('Thickness');
    const bars = page.locator('.drawing').getByRole('option');
    // Two buttons, three bosses, the well.
    expect(await bars.count()).toBe(6);
    const upper = await attribute('[role=listbox] .half', 'height');
    const bar = await attribute('[role=option] .reach', 'height');
    // A button reaches 1 below and 3 above, and the upper half is 12 thick; rubber shrink is left out in this plan.
    const reach = figure('depth.below', 'button-1') + figure('height.above', 'button-1');
    expect(bar / upper).toBeCloseTo(reach / 12, 4);
    const row = page.locator('.rows tbody tr').first();
    const cover = Math.min(figure('cover.lower', 'button-1'), figure('cover.upper', 'button-1'));
    expect(await row.innerText()).toContain(`${cover.toFixed(2)} mm`);
    const stock = figure('cover.stock-upper');
    expect(await page.locator('.sheet').innerText()).toContain(`${stock.toFixed(2)} mm stock`);
    await keepPicture(page, 'thickness');
  });

  it('links bar, row and picture, by mouse and by keys', async () => {
    const rows = page.locator('.rows tbody tr');
    const canvas = page.locator('canvas');
    await page.getByRole('button', { name: 'open book' }).click();
    await drawn(page);
    const before = await canvas.screenshot();
    await page.locator('.drawing').getByRole('option').nth(2).hover();
    expect(await rows.nth(2).getAttribute('class')).toContain('is-near');
    await page.mouse.move(5, 5);
    expect(await rows.nth(2).getAttribute('class')).not.toContain('is-near');
    await page.getByRole('listbox').focus();
    for (let presses = 0; presses < 3; presses++) await page.keyboard.press('ArrowRight');
    expect(await rows.nth(2).getAttribute('class')).toContain('is-near');
    expect(await page.locator('.told').innerText()).toContain('boss-1');
    await drawn(page);
    expect(Buffer.compare(await canvas.screenshot(), before)).not.toBe(0);
    await rows.nth(1).getByRole('button').focus();
    expect(await page.locator('.drawing').getByRole('option').nth(1).getAttribute('aria-selected')).toBe(
      'true',
    );
  });

  it('speaks inches where they are asked for', async () => {
    await page.getByRole('button', { name: 'in', exact: true }).click();
    const cover = Math.min(figure('cover.lower', 'button-1'), figure('cover.upper', 'button-1'));
    expect(await page.locator('.rows tbody tr').first().innerText()).toContain(
      `${(cover / 25.4).toFixed(3)} in`,
    );
    await page.getByRole('button', { name: 'mm', exact: true }).click();
  });
});

describe('the sheet on balance', () => {
  it('draws the heavy side against what is allowed, to one scale', async () => {
    await step('Balance');
    const arrow = await attribute('.heavy line', 'x2');
    const circle = await attribute('.allowed', 'r');
    expect(arrow / circle).toBeCloseTo(figure('balance.static') / figure('balance.permissible'), 6);
    const turned = await page.locator('.heavy').getAttribute('transform');
    expect(turned).toBe(`rotate(${-figure('balance.angle')})`);
    expect(await page.locator('.facts').innerText()).toContain(`${figure('balance.static').toFixed(0)} g.mm`);
    await keepPicture(page, 'balance');
  });
});

describe('the sheet on spinning', () => {
  it('plots the pressure of the report and reads it off', async () => {
    await step('Spin');
    const series = report.series.find(({ name }) => name === 'pressure.radius');
    const d = (await page.locator('.plot .curve').getAttribute('d')) ?? '';
    expect(d.split('L')).toHaveLength(series?.x.values.length ?? 0);
    const plot = page.locator('.plot');
    const box = await plot.boundingBox();
    if (!box) throw new Error('no plot');
    await plot.click({ position: { x: box.width - 2, y: box.height / 2 } });
    const last = (series?.y.values.at(-1) ?? 0) / 1000;
    expect(await page.locator('.sheet').innerText()).toContain(`${last.toFixed(2)} kPa.`);
    const outer = figure('pressure.outer', 'button-1') / 1000;
    expect(await page.locator('.rows').innerText()).toContain(`${outer.toFixed(1)} kPa`);
    await keepPicture(page, 'spin');
  });

  it('without a complaint of the page', () => {
    expect(complaints).toEqual([]);
  });
});
