import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { FigureName, Report } from '../../src/findings/index.ts';
import { companded, linearAt } from '../../src/preview/state/wall-ramp.ts';
import { filesIn, run } from '../cli/workbench.ts';
import { buttons, bytesOf, drawn, keepPicture, marked, onePage, shop } from './shop.ts';

// Every number on the sheets of the bench steps is held to the command's own report on the same plan; every length in
// a drawing to the ratio of the two figures it stands for.

const { put, path, serve, show } = shop();

const bench = `rubber: { density: 1.15 g/cm3 }
alloy: { name: pewter type 2, liquidus: 240, pour: 285 }
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
    expect(await row.textContent()).toContain(`${cover.toFixed(2)} mm`);
    const stock = figure('cover.stock-upper');
    expect(await page.locator('.sheet').textContent()).toContain(`${stock.toFixed(2)} mm stock`);
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
    expect(await page.locator('.told').textContent()).toContain('boss-1');
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
    expect(await page.locator('.rows tbody tr').first().textContent()).toContain(
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
    expect(await page.locator('.facts').textContent()).toContain(
      `${figure('balance.static').toFixed(0)} g.mm`,
    );
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
    expect(await page.locator('.sheet').textContent()).toContain(`${last.toFixed(2)} kPa.`);
    // By keys too: from one end to the other in ninety steps.
    await plot.focus();
    await page.keyboard.press('Home');
    const [inmost, least] = [series?.x.values[0] ?? 0, (series?.y.values[0] ?? 0) / 1000];
    await page.getByText(`${inmost.toFixed(2)} mm from the axis: ${least.toFixed(2)} kPa.`).waitFor();
    await page.keyboard.press('End');
    await page.keyboard.press('ArrowLeft');
    const reach = series?.x.values.at(-1) ?? 0;
    expect(Number(await plot.getAttribute('aria-valuenow'))).toBeCloseTo(reach - (reach - inmost) / 90, 6);
    const outer = figure('pressure.outer', 'button-1') / 1000;
    expect(await page.locator('.rows').textContent()).toContain(`${outer.toFixed(1)} kPa`);
    await keepPicture(page, 'spin');
  });
});

describe('the sheet on walls', () => {
  /** How much of the picture has the color of a place on the scale, to 3 steps of 255: the walls are not lit. */
  const shareOf = async (share: number): Promise<number> => {
    const [r, g, b] = linearAt(share).map((light) => Math.round(255 * companded(light)));
    const shot = (await page.locator('canvas').screenshot()).toString('base64');
    return page.evaluate(
      async ([png, wanted]) => {
        const image = new Image();
        image.src = `data:image/png;base64,${png}`;
        await image.decode();
        const canvas = new OffscreenCanvas(image.width, image.height);
        const pen = canvas.getContext('2d');
        if (!pen) return 0;
        pen.drawImage(image, 0, 0);
        const { data } = pen.getImageData(0, 0, image.width, image.height);
        let found = 0;
        for (let i = 0; i < data.length; i += 4) {
          if ([0, 1, 2].every((k) => Math.abs(data[i + k] - wanted[k]) <= 3)) found++;
        }
        return found / (data.length / 4);
      },
      [shot, [r, g, b]] as const,
    );
  };

  it('paints each cavity in the color of its distance, while it is open', async () => {
    await page.getByRole('button', { name: 'from above' }).click();
    await drawn(page);
    // Tops of the buttons are 9 mm under the outer face and farther from all else; the scale goes to 15.
    const top = 9 / 15;
    const before = await shareOf(top);
    await step('Walls');
    await page.waitForFunction(() => performance.getEntriesByName('walls shown').length > 0);
    await drawn(page);
    expect(await shareOf(top)).toBeGreaterThan(before + 0.002);
    await keepPicture(page, 'walls');
    await step('Spin');
    await drawn(page);
    expect(await shareOf(top)).toBeCloseTo(before, 3);
    await step('Walls');
  });

  it('lists the thinnest walls of the report, and flies there', async () => {
    const walls = report.figures
      .filter(({ name, places }) => name.startsWith('walls.') && places?.length === 2)
      .sort((a, b) => a.value - b.value);
    const rows = page.locator('.rows tbody tr');
    for (const [i, { subject, value }] of walls.slice(0, 3).entries()) {
      expect(await rows.nth(i).textContent()).toContain(subject.split(' ').join(' to '));
      expect(await rows.nth(i).textContent()).toContain(`${value.toFixed(2)} mm`);
    }
    const before = await page.locator('canvas').screenshot();
    await rows.nth(0).getByRole('button').focus();
    await page.keyboard.press('Enter');
    await drawn(page);
    await keepPicture(page, 'walls-near');
    expect(Buffer.compare(await page.locator('canvas').screenshot(), before)).not.toBe(0);
  });
});

describe('the sheet to take things away', () => {
  /** What comes of a click. */
  const taken = async (name: string | RegExp): Promise<{ name: string; bytes: Uint8Array }> => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.locator('.sheet').getByRole('button', { name }).click(),
    ]);
    return { name: download.suggestedFilename(), bytes: await bytesOf(download) };
  };
  /**
   * Report and manifest as data. The command names the plan by its whole path, and the last digit of a sine may differ
   * between the browser's engine and that of Node: so that the report's own hash and length differ too.
   */
  const plain = (json: Uint8Array): unknown => {
    const text = Buffer.from(json).toString().replaceAll(JSON.stringify(plan), '"plan.yaml"');
    return JSON.parse(text, (key, value) => {
      // Where the plan lies on disk the page does not know.
      if (key === 'plan' && value?.sha256) return { ...value, file: undefined, inputs: undefined };
      if (value?.name === 'report.json' || value?.path === 'report.json') return 'report.json';
      return typeof value === 'number' && key !== 'bytes' ? Number(value.toFixed(7)) : value;
    });
  };
  let files: Map<string, Uint8Array>;
  beforeAll(async () => {
    await run('build', plan, '--out', path('out'));
    files = filesIn(path('out/oak-buttons'));
    await step('Take away');
  });

  it('gives all files of the command in a zip, byte for byte', async () => {
    const { name, bytes } = await taken(/zip/);
    expect(name).toBe('Oak buttons.zip');
    const inside = unzipSync(bytes);
    expect(Object.keys(inside).sort()).toEqual([...files.keys()].sort());
    for (const [file, made] of files) {
      if (file.endsWith('.json')) expect(plain(inside[file]), file).toEqual(plain(made));
      else expect(Buffer.compare(inside[file], made), file).toBe(0);
    }
    await keepPicture(page, 'take-away');
  });

  it('gives one STL, the 3MF, the shop sheet and drawings', async () => {
    const one = await taken('lower-half.stl');
    expect(one.name).toBe('lower-half.stl');
    expect(Buffer.compare(one.bytes, files.get('look/lower-half.stl') ?? new Uint8Array())).toBe(0);
    for (const [button, ending] of [
      [/3MF/, '.3mf'],
      [/Shop sheet/, '.pdf'],
    ] as const) {
      const { name, bytes } = await taken(button);
      expect(name.endsWith(ending), name).toBe(true);
      const path = [...files.keys()].find((one) => one.split('/').at(-1) === name) ?? '';
      expect(Buffer.compare(bytes, files.get(path) ?? new Uint8Array()), name).toBe(0);
    }
    const drawings = unzipSync((await taken(/DXF/)).bytes);
    const expected = [...files.keys()].filter((name) => name.endsWith('.dxf'));
    expect(Object.keys(drawings).sort()).toEqual(expected.sort());
  });

  it('gives the same sheet from the page in one file, offline', async () => {
    const text = readFileSync(plan).toString('base64');
    const { page } = await show(`file://${onePage}`, { offline: true });
    await page.evaluate((plan) => {
      const transfer = new DataTransfer();
      const bytes = Uint8Array.from(atob(plan), (letter) => letter.charCodeAt(0));
      transfer.items.add(new File([bytes], 'plan.yaml'));
      dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
    }, text);
    await marked(page, 'mold built');
    await page.getByRole('navigation').getByRole('button', { name: 'Take away' }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page
        .locator('.sheet')
        .getByRole('button', { name: /Shop sheet/ })
        .click(),
    ]);
    const bytes = await bytesOf(download);
    expect(Buffer.compare(bytes, files.get('shop-sheet.pdf') ?? new Uint8Array())).toBe(0);
    await page.context().close();
  });

  it('gives a picture of the view', async () => {
    const { bytes } = await taken(/Picture/);
    expect([...bytes.subarray(1, 4)]).toEqual([...Buffer.from('PNG')]);
    const head = new DataView(bytes.buffer, 16, 8);
    const { width, height } = (await page.locator('canvas').boundingBox()) ?? { width: 0, height: 0 };
    expect([head.getUint32(0), head.getUint32(4)]).toEqual([width, height]);
    expect(bytes.length).toBeGreaterThan(10_000);
  });

  it('leaves off when told to, and can be asked again', async () => {
    const downloads: string[] = [];
    page.on('download', (download) => downloads.push(download.suggestedFilename()));
    await page.locator('.sheet').getByRole('button', { name: /zip/ }).click();
    await page.getByRole('button', { name: 'Leave off', exact: true }).click();
    await page.waitForTimeout(3000);
    expect(downloads).toEqual([]);
    expect(await page.locator('.making').count()).toBe(0);
    await taken(/3MF/);
  });

  it('without a complaint of the page', () => {
    expect(complaints).toEqual([]);
  });
});
