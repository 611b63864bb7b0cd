import type { ChildProcess } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Report } from '../../src/findings/index.ts';
import { run } from '../cli/workbench.ts';
import { bumpyMesh } from './bumpy-mesh.ts';
import { buttons, colorsIn, drawn, keepPicture, marked, onePage, shop } from './shop.ts';

const { put, path, serve, show, folder } = shop();

/** Serious faults of the page for people who do not see it or do not use a mouse, by axe-core. */
async function seriousFaults(page: Page): Promise<string[]> {
  const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  await page.evaluate(source);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: {
        run(): Promise<{
          violations: {
            id: string;
            impact: string | null;
            nodes: { html: string; failureSummary?: string }[];
          }[];
        }>;
      };
    };
    const { violations } = await axe.run();
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) =>
        nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary}`),
      );
  });
}

const triangles = async (page: Page): Promise<number> => {
  await drawn(page);
  return Number(await page.locator('canvas').getAttribute('data-triangles'));
};

const step = (page: Page, title: string): Promise<void> =>
  page.getByRole('navigation').getByRole('button', { name: title }).click();

interface Manifest {
  readonly files: readonly {
    readonly solid?: {
      readonly role: string;
      readonly triangles: number;
      readonly subjects: readonly string[];
    };
  }[];
}

describe('a small mold', () => {
  const plan = put('shop/plan.yaml', buttons);
  let page: Page;
  let complaints: readonly string[];
  let child: ChildProcess;
  beforeAll(async () => {
    const served = await serve(join(folder, 'shop'));
    child = served.child;
    ({ page, complaints } = await show(served.url, { hasTouch: true }));
    await marked(page, 'mold built');
  });

  it('is drawn triangle for triangle as the command makes it', async () => {
    const out = path('out');
    const seconds = await page.evaluate(() =>
      ['mold laid', 'mold built'].map((name) => performance.getEntriesByName(name)[0].startTime / 1000),
    );
    const start = performance.now();
    await run('build', plan, '--out', out, '--formats', 'stl');
    const build = (performance.now() - start) / 1000;
    console.log(
      `a small mold is laid ${seconds[0].toFixed(1)} s after the page was asked for and built after ` +
        `${seconds[1].toFixed(1)} s: ${(seconds[0] / build).toFixed(2)} and ${(seconds[1] / build).toFixed(2)} of the ` +
        `${build.toFixed(1)} s of discwright build --formats stl`,
    );
    const manifest = JSON.parse(readFileSync(join(out, 'oak-buttons/manifest.json'), 'utf8')) as Manifest;
    const made = manifest.files.flatMap(({ solid }) => solid ?? []);
    // What is shown at first: no plug, blanks, notches or bench tools; M6 stands twice; three button boxes of 12 triangles.
    const expected = made
      .filter(({ role }) => ['half', 'sprue form', 'tab', 'boss'].includes(role))
      .reduce((sum, one) => sum + one.triangles * (one.role === 'boss' ? one.subjects.length : 1), 3 * 12);
    expect(await triangles(page)).toBe(expected);
    expect(await colorsIn(page)).toBeGreaterThan(200);
    await keepPicture(page, 'buttons');
  });

  it('shows where it closes wrongly, with the misfit of the command', async () => {
    const { out } = await run('check', plan, '--json');
    const { figures, series } = JSON.parse(out) as Report;
    const misfit = figures.find(({ name }) => name === 'registration.falseSeat')?.value ?? Number.NaN;
    await step(page, 'Close');
    await expectText(page, `still ${misfit.toFixed(2)} mm off`);
    await page.getByLabel('Apart').fill('0');
    expect(await page.locator('tr.is-in').count()).toBe(3);
    await page.getByRole('slider', { name: 'Turned by', exact: true }).fill('40');
    expect(await page.locator('tr.is-clash').count()).toBe(3);
    // No socket is near: the whole heads are in the way, 7 and 6 mm high (DIN 1587: M6 h 12 less m 5, M5 h 10 less m 4).
    expect(await page.locator('tr.is-clash').allInnerTexts()).toEqual([
      expect.stringContaining('clash, 7.00 mm'),
      expect.stringContaining('clash, 6.00 mm'),
      expect.stringContaining('clash, 7.00 mm'),
    ]);
    const limit = series.find(({ name }) => name === 'registration.misfit')?.limit?.value ?? Number.NaN;
    expect(await page.locator('.plot').textContent()).toContain(`${limit.toFixed(2)} mm wanted`);
    // A boss 38 mm out, turned by 40 degrees: a chord of 2 R sin(a / 2).
    await expectText(page, `${(2 * 38 * Math.sin((20 * Math.PI) / 180)).toFixed(2)} mm`);
    await page.getByRole('button', { name: 'see-through' }).click();
    await keepPicture(page, 'closing-turned');
    await page.getByRole('button', { name: 'see-through' }).click();

    // Two tenths of a degree off, 0.13 mm at 38 mm, is more than the flex of 0.1 mm.
    await page.getByRole('spinbutton', { name: 'Turned by, degrees' }).fill('0.2');
    await page.getByRole('spinbutton', { name: 'Turned by, degrees' }).press('Enter');
    await expectText(page, '0.13 mm');
    expect(await page.locator('tr.is-clash').count()).toBe(3);
    await page.getByRole('slider', { name: 'Turned by', exact: true }).fill('0');
    await page.getByLabel('Cut between').selectOption('y');
    expect(await colorsIn(page)).toBeGreaterThan(200);
    await keepPicture(page, 'cut');
    await page.getByLabel('Cut between').selectOption('none');
    await page.getByRole('button', { name: 'open book' }).click();
    await keepPicture(page, 'open-book');
    expect(complaints).toEqual([]);
  });

  it('has no serious fault for the accessibility checker, light and dark, and no side scroll on a tablet', async () => {
    await page.setViewportSize({ width: 1024, height: 768 });
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      const titles = await page.locator('.steps .step').allInnerTexts();
      for (const title of titles) {
        await step(page, title.replace(/^\d+\s*/, ''));
        expect(await seriousFaults(page), `${title} ${colorScheme}`).toEqual([]);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(wide, `${title} is too wide`).toBeLessThanOrEqual(0);
      }
      await keepPicture(page, `tablet-${colorScheme}`);
    }
  });

  it('is left cleanly by Ctrl-C, even with a page open that listens for changes', async () => {
    expect(complaints).toEqual([]);
    const code = new Promise((resolve) => child.once('exit', resolve));
    child.kill('SIGINT');
    expect(await code).toBe(0);
    await page.context().close();
  });
});

describe('the page in one file, from disk, offline', () => {
  let page: Page;
  let complaints: readonly string[];
  beforeAll(async () => {
    ({ page, complaints } = await show(`file://${onePage}`, { offline: true }));
  });

  it('makes a disc from the first look, without a plan', async () => {
    expect(await seriousFaults(page)).toEqual([]);
    await keepPicture(page, 'first-look');
    await page.getByRole('button', { name: '150 mm' }).click();
    await page.getByRole('button', { name: 'Start with this disc' }).click();
    await marked(page, 'mold built');
    await expectText(page, '150.00 mm across');
  });

  it('shows a plan and a mesh dropped on it', async () => {
    const built = await page.evaluate(() => performance.getEntriesByName('mold built').length);
    const text = buttons.replace(
      '{ length: 12, width: 12, above: 3, below: 1 }',
      '{ file: leaf.stl, unit: mm }',
    );
    const files = [
      { name: 'plan.yaml', text: Buffer.from(text).toString('base64') },
      { name: 'leaf.stl', text: Buffer.from(bumpyMesh(24, 12, 6)).toString('base64') },
    ];
    await page.evaluate(async (list) => {
      const transfer = new DataTransfer();
      for (const { name, text } of list) {
        const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
        transfer.items.add(new File([bytes], name));
      }
      dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
    }, files);
    await page.getByRole('heading', { name: 'Oak buttons' }).waitFor();
    await marked(page, 'mold built', built + 1);
    expect(await colorsIn(page)).toBeGreaterThan(200);
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('bad input', () => {
  it('says why a plan cannot be read on every sheet, and shows the mold anew when its file changes on disk', async () => {
    const wrong = put('wrong/plan.yaml', buttons.replace('process: rubber', 'process: ruber'));
    const { url } = await serve(wrong);
    const { page } = await show(url);
    const why = page.getByRole('region', { name: 'Why the plan is not laid out' });
    await why.getByText('Write rubber if that is meant.').waitFor();
    await step(page, 'Thickness');
    expect(await why.getByText('Write rubber if that is meant.').count()).toBe(1);
    writeFileSync(wrong, buttons);
    await marked(page, 'mold built');
    await why.waitFor({ state: 'detached' });
    // And anew with each further change.
    writeFileSync(wrong, buttons.replace('Oak buttons', 'Elder buttons'));
    await page.getByRole('heading', { name: 'Elder buttons' }).waitFor();
    await marked(page, 'mold built', 2);
    await page.context().close();
  });

  it('is told in words, with what to do', async () => {
    const broken = put(
      'broken/plan.yaml',
      buttons.replace('{ length: 12, width: 12, above: 3, below: 1 }', '{ file: torn.stl }'),
    );
    put('broken/torn.stl', 'solid torn\nfacet normal 0 0 1\nouter loop\nvertex 0 0\n');
    const { url } = await serve(broken);
    const { page } = await show(url);
    await page.locator('.verdict.is-stop').click();
    await expectText(page, 'button');
    const finding = page.locator('.finding.is-stop').first();
    const [severity, code] = ((await finding.getByRole('button').textContent()) ?? '').split(' ');
    expect(severity).toBe('stop');
    const { err } = await run('check', broken);
    expect(err).toContain(code);
    // What is wrong, and what to do.
    expect(await finding.locator('p').count()).toBeGreaterThan(1);
    await page.context().close();
  });
});

async function expectText(page: Page, text: string): Promise<void> {
  await page.getByText(text).first().waitFor();
  expect(await page.getByText(text).count()).toBeGreaterThan(0);
}
