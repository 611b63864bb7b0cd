import { existsSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Report } from '../../src/findings/index.ts';
import { run } from '../cli/workbench.ts';
import { bumpyMesh } from './bumpy-mesh.ts';
import { buttons, keepPicture, marked, onePage, shop } from './shop.ts';

// Files as a person brings them: dragged in from the system by the browser itself, not by a script on the page.

const { put, path, serve, show } = shop();

/** Drags files over the page and lets them fall in its middle. */
async function dropFiles(page: Page, files: readonly string[]): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  const data = { items: [], files: [...files], dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const) {
    await devtools.send('Input.dispatchDragEvent', { type, x: 640, y: 400, data });
  }
  await devtools.detach();
}

const inList = (page: Page, id: string) =>
  page.getByRole('button', { name: new RegExp(`^(\\d+ )?(~ )?${id}$`) });

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

const withMesh = buttons.replace(
  '{ length: 12, width: 12, above: 3, below: 1 }',
  '{ file: nut.stl, unit: mm }',
);

describe('files dropped on the page in one file, from disk, offline', () => {
  let page: Page;
  let complaints: readonly string[];
  beforeAll(async () => {
    ({ page, complaints } = await show(pathToFileURL(onePage).href, { offline: true }));
  });

  it('that are of no use are named', async () => {
    await dropFiles(page, [put('drop/letter.txt', 'hello')]);
    await page
      .getByText('letter.txt is no plan (YAML), mesh (STL, OBJ, 3MF) or outline (SVG, DXF).')
      .waitFor();
  });

  it('are not needed for the presets that are in it; those that are not are named', async () => {
    const cards = await page.locator('.cards strong').allTextContents();
    expect(cards).toEqual(['Drawer of patterns', 'Sprue form 32 mm']);
    await page
      .getByText(/Not in this one file.*Hedgerow charms, Hedgerow charms, rigid test, Pattern plates\./)
      .waitFor();
    await button(page, /Drawer of patterns/).click();
    await inList(page, 'key-plate-3').waitFor();
    await button(page, /^0 stop/).waitFor();
  });

  it('are opened: a plan and its meshes', async () => {
    const files = [put('drop/nuts.yaml', withMesh), put('drop/nut.stl', new Uint8Array(bumpyMesh(12, 6, 5)))];
    await dropFiles(page, files);
    await page.getByRole('heading', { name: 'Oak buttons' }).waitFor();
    const { out } = await run('check', files[0], '--json');
    const { findings } = JSON.parse(out) as Report;
    const stops = findings.filter(({ severity }) => severity === 'stop').length;
    const warns = findings.filter(({ severity }) => severity === 'warn').length;
    await button(page, new RegExp(`^${stops} stop, ${warns} warn`)).waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('a mesh dropped on a plan that is served', () => {
  it('becomes a master, and is saved into the masters’ folder, where the plan finds it', async () => {
    const plan = put('served/plan.yaml', buttons);
    const { url } = await serve(plan);
    const { page, complaints } = await show(url);
    await marked(page, 'mold built');
    const mesh = Buffer.from(bumpyMesh(12, 6, 5));
    await dropFiles(page, [put('desk/Sloe.stl', mesh)]);
    await inList(page, 'sloe').waitFor();
    await keepPicture(page, 'dropped');
    expect(existsSync(path('served/masters'))).toBe(false);
    await button(page, 'Save plan').click();
    await button(page, 'Saved').waitFor();
    expect(readFileSync(plan, 'utf8')).toContain('  sloe: { file: masters/Sloe.stl }\n');
    expect(Buffer.compare(readFileSync(path('served/masters/Sloe.stl')), mesh)).toBe(0);
    const { out } = await run('check', plan, '--json');
    const { figures } = JSON.parse(out) as Report;
    expect(figures.filter(({ name, subject }) => name === 'depth.below' && subject === 'sloe')).toHaveLength(
      1,
    );

    // Another file of the same name: nothing is written over, and the plan stays as it is on disk.
    const other = Buffer.from(bumpyMesh(12, 6, 4));
    put('served/masters/Hip.stl', mesh);
    await dropFiles(page, [put('desk/Hip.stl', other)]);
    await inList(page, 'hip').waitFor();
    const before = readFileSync(plan, 'utf8');
    await button(page, 'Save plan').click();
    await page.getByText('another masters/Hip.stl is there already').waitFor();
    expect(Buffer.compare(readFileSync(path('served/masters/Hip.stl')), mesh)).toBe(0);
    expect(readFileSync(plan, 'utf8')).toBe(before);
    expect(complaints.filter((one) => !one.includes('409'))).toEqual([]);
    await page.context().close();
  });
});

describe('masters that lie beside another plan', () => {
  it('are shown without a word more on the command line', async () => {
    put('shelf/nut.stl', new Uint8Array(bumpyMesh(12, 6, 5)));
    const plan = put('shelf/test/plan.yaml', withMesh.replace('nut.stl', '../nut.stl'));
    const { url } = await serve(plan);
    const { page, complaints } = await show(url);
    await button(page, /^0 stop/).click();
    await page.getByText("read from outside the plan's folder").waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
