import { beforeAll, describe, expect, test } from 'vitest';
import { readFonts } from '../../cli/fonts.ts';
import type { Build } from '../../src/export/index.ts';
import { shopSheet } from '../../src/export/shop-sheet/sheet.ts';
import { tilesOf } from '../../src/export/shop-sheet/tiles.ts';
import { finding, joinReport } from '../../src/findings/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { exampleMold } from '../parts/example-mold.ts';
import { hasPoppler, pageTexts, type RenderedPage, renderPage } from '../rendered-page.ts';

const dpi = 300;
const mm = (pixels: number): number => (pixels / dpi) * 25.4;

const build = (mold: Mold): Build => ({
  mold,
  planHash: '0123456789abcdef'.repeat(4),
  version: '0.0.0',
  solids: [],
  drawings: [],
  withheld: [],
  report: joinReport(mold.title, [
    {
      findings: [
        finding('cover.thin', { subject: 'snail', says: 'The snail stands 1.2 mm from the outer face.' }),
      ],
    },
  ]),
});

const fonts = await readFonts();
const sheetOf = (mold: Mold): Promise<Uint8Array> => shopSheet(build(mold), fonts);

/** The longest unbroken black run in the lowest part of a page that lies between two lengths, as pixels. */
function longestRun(page: RenderedPage, least: number, most: number): number {
  let found = 0;
  for (let row = Math.floor(page.height * 0.8); row < page.height; row++) {
    let run = 0;
    for (let column = 0; column <= page.width; column++) {
      if (column < page.width && page.at(column, row) < 128) run++;
      else {
        if (run > found && mm(run) > least && mm(run) < most) found = run;
        run = 0;
      }
    }
  }
  return found;
}

describe.runIf(hasPoppler())('the sheet as another program draws it (Poppler)', () => {
  let pages: string[];
  let sheet: Uint8Array;
  beforeAll(async () => {
    sheet = await sheetOf(exampleMold());
    pages = pageTexts(sheet);
  });

  const pageNamed = (title: string): number => pages.findIndex((text) => text.includes(title)) + 1;

  test.each(['A4', 'Letter'] as const)(
    'on %s, a bar of 100 mm measures 100 mm within 0.2 at 300 dpi',
    async (paper) => {
      const own = await sheetOf({ ...exampleMold(), paper });
      const page = pageTexts(own).findIndex((text) => text.includes('Plan view 1:1')) + 1;
      const bar = mm(longestRun(renderPage(own, page, dpi), 95, 110));
      expect(Math.abs(bar - 100)).toBeLessThan(0.2);
    },
  );

  test('the page has the size of its paper: A4 by ISO 216, Letter by ANSI/ASME Y14.1', async () => {
    const page = renderPage(sheet, 1, 100);
    expect(Math.abs(page.width - (210 / 25.4) * 100)).toBeLessThanOrEqual(1);
    expect(Math.abs(page.height - (297 / 25.4) * 100)).toBeLessThanOrEqual(1);
    const letter = renderPage(await sheetOf({ ...exampleMold(), paper: 'Letter' }), 1, 100);
    expect([letter.width, letter.height]).toEqual([850, 1100]);
  });

  test('the rim is drawn at true size', async () => {
    const mold = exampleMold();
    const small: Mold = {
      ...mold,
      disc: { ...mold.disc, radius: 60 },
      placements: [],
      bosses: [],
      tabs: [],
      notches: [],
      channels: [],
    };
    const own = await sheetOf(small);
    const page = renderPage(own, pageTexts(own).findIndex((text) => text.includes('Plan view 1:1')) + 1, dpi);
    let [least, most] = [page.width, 0];
    for (let row = Math.floor(page.height * 0.25); row < page.height * 0.8; row++)
      for (let column = 0; column < page.width; column++)
        if (page.at(column, row) < 128) [least, most] = [Math.min(least, column), Math.max(most, column)];
    // The rim's line is 0.4 mm wide; right of it stands the 0 of the index mark.
    const middle = page.width / 2;
    expect(Math.abs(mm(middle - least) - 60)).toBeLessThan(0.4);
    expect(mm(most - middle)).toBeGreaterThan(59.8);
  });

  test('every placement, boss and finding stands on the paper, and the cautions on its first page', () => {
    const whole = pages.join('\n');
    const { placements, bosses } = exampleMold();
    for (const { id } of [...placements, ...bosses]) expect(whole).toContain(id);
    expect(whole.replaceAll(/\s+/g, ' ')).toContain('The snail stands 1.2 mm from the outer face.');
    expect(pages[0]).toContain('Molten metal and water explode');
    expect(pageNamed('Pour record')).toBe(pages.length);
  });
});

test('the same build gives the same bytes', async () => {
  expect(Buffer.compare(await sheetOf(exampleMold()), await sheetOf(exampleMold()))).toBe(0);
});

test('letters outside the usual alphabets do no harm, and long names are broken', async () => {
  const title = 'Żółw 蝸牛 <b>&'.repeat(20);
  expect((await sheetOf({ ...exampleMold(), title })).length).toBeGreaterThan(1000);
});

describe('pages of the plan view', () => {
  test.each([
    [100, 186, 240, 1, 1],
    [186, 186, 240, 1, 1],
    [187, 186, 240, 2, 1],
    [390, 186, 240, 3, 2],
  ])('a square of %d mm on pages of %d x %d takes %d x %d', (span, width, height, columns, rows) => {
    const tiles = tilesOf(span, width, height);
    expect(tiles.length).toBe(columns * rows);
    const left = Math.min(...tiles.map(({ x }) => x));
    const right = Math.max(...tiles.map(({ x }) => x + width));
    const top = Math.max(...tiles.map(({ y }) => y));
    const bottom = Math.min(...tiles.map(({ y }) => y - height));
    expect(Math.min(-left, right, top, -bottom)).toBeGreaterThanOrEqual(span / 2);
    // Neighbors share 10 mm.
    for (const tile of tiles) {
      const next = tiles.find(({ column, row }) => column === tile.column + 1 && row === tile.row);
      if (next) expect(tile.x + width - next.x).toBeCloseTo(10, 9);
    }
  });
});
