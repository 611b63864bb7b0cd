import { beforeAll, describe, expect, test } from 'vitest';
import { readFonts } from '../../cli/fonts.ts';
import { type Build, exportSolid } from '../../src/export/index.ts';
import { shopSheet } from '../../src/export/shop-sheet/sheet.ts';
import { tilesOf } from '../../src/export/shop-sheet/tiles.ts';
import { joinReport } from '../../src/findings/index.ts';
import { translation } from '../../src/geometry/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { runs, sayFinding } from '../../src/wording/index.ts';
import { thinCover } from '../example-findings.ts';
import { box, solidOf } from '../export/shapes.ts';
import { masterOf, ring } from '../parts/example-masters.ts';
import { exampleMold } from '../parts/example-mold.ts';
import { hasPoppler, pageTexts, type RenderedPage, renderPage } from '../rendered-page.ts';
import { straightChannel } from '../straight-channel.ts';

const dpi = 300;
const mm = (pixels: number): number => (pixels / dpi) * 25.4;

/** Three leaves round a disc. */
const placedMold = (): Mold => {
  const leaf = masterOf('leaf', box([8, 5, 4], [-4, -2.5, -2]));
  return { ...exampleMold(), masters: [leaf], placements: ring(leaf, 3, 40) };
};

const build = (mold: Mold): Build => ({
  mold,
  planHash: '0123456789abcdef'.repeat(4),
  version: '0.0.0',
  solids: [],
  drawings: [],
  withheld: [],
  report: joinReport(mold.title, mold.units, [{ findings: [thinCover('snail')] }]),
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
    sheet = await sheetOf(placedMold());
    pages = pageTexts(sheet);
  });

  test('runners are cut before the gates that lead out of them, and vent pins have a list with places', async () => {
    const strip = { placement: 'leaf-1', width: 3, depth: 1.5, half: 'upper' } as const;
    const channels = [
      straightChannel({
        ...strip,
        id: 'gate-leaf-1',
        kind: 'gate',
        from: [28, 0],
        to: [36, 0],
        opensInto: 'runner-arm',
      }),
      straightChannel({ ...strip, id: 'runner-arm', kind: 'runner', from: [12, 0], to: [28, 0], depth: 1 }),
    ];
    const pin = { id: 'pin-1', x: 30, y: 40, diameter: 1.5, half: 'lower', depth: 8.25, reach: 9 } as const;
    const text = pageTexts(
      await sheetOf({ ...placedMold(), process: 'rubber', channels, ventPins: [pin] }),
    ).join('\n');
    const cutting = text.slice(text.indexOf('Order of cutting'));
    expect(cutting.indexOf('runner-arm')).toBeGreaterThan(0);
    expect(cutting.indexOf('runner-arm')).toBeLessThan(cutting.indexOf('gate-leaf-1'));
    const drilling = text.slice(text.indexOf('Vent pins to drill'));
    // 3, 4, 5: 50 mm from the axis, at 53.1 degrees.
    for (const said of ['pin-1', 'lower', '1.50 mm', '30.00 mm', '40.00 mm', '50.00 mm', '53.1', '8.25 mm'])
      expect(drilling).toContain(said);
  });

  const pageNamed = (title: string): number => pages.findIndex((text) => text.includes(title)) + 1;

  test.each(['A4', 'Letter'] as const)(
    'on %s, a bar of 100 mm and one of 4 in measure so within 0.2 mm at 300 dpi',
    async (paper) => {
      const own = await sheetOf({ ...placedMold(), paper });
      const page = pageTexts(own).findIndex((text) => text.includes('Plan view 1:1')) + 1;
      const drawn = renderPage(own, page, dpi);
      expect(Math.abs(mm(longestRun(drawn, 95, 100.8)) - 100)).toBeLessThan(0.2);
      expect(Math.abs(mm(longestRun(drawn, 95, 110)) - 101.6)).toBeLessThan(0.2);
    },
  );

  test('the page has the size of its paper: A4 by ISO 216, Letter by ANSI/ASME Y14.1', async () => {
    const page = renderPage(sheet, 1, 100);
    expect(Math.abs(page.width - (210 / 25.4) * 100)).toBeLessThanOrEqual(1);
    expect(Math.abs(page.height - (297 / 25.4) * 100)).toBeLessThanOrEqual(1);
    const letter = renderPage(await sheetOf({ ...placedMold(), paper: 'Letter' }), 1, 100);
    expect([letter.width, letter.height]).toEqual([850, 1100]);
  });

  test('the rim is drawn at true size', async () => {
    const mold = placedMold();
    const small: Mold = {
      ...mold,
      disc: { ...mold.disc, radius: 60 },
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
    const { placements, bosses } = placedMold();
    for (const { id } of [...placements, ...bosses]) expect(whole).toContain(id);
    expect(whole.replaceAll(/\s+/g, ' ')).toContain('snail leaves 1.00 mm (0.039 in) in the lower half');
    expect(pages[0]).toContain('Molten metal and water explode');
    expect(pageNamed('If a casting is not right')).toBeGreaterThan(0);
    expect(pageNamed('Pour record')).toBe(pages.length);
  });
});

/** Shares of the page's width that are free of ink to the left and to the right. */
function freeSides(page: RenderedPage): [number, number] {
  let [least, most] = [page.width, 0];
  for (let row = 0; row < page.height; row++)
    for (let column = 0; column < page.width; column++)
      if (page.at(column, row) < 200) [least, most] = [Math.min(least, column), Math.max(most, column)];
  return [least / page.width, (page.width - 1 - most) / page.width];
}

describe.runIf(hasPoppler())('a plan of forty placements with names as long as they may be', () => {
  const name = (i: number): string => `${'hedgerow-autumn-'.repeat(4).slice(0, 57)}-${i}`;
  const mold = placedMold();
  const master = masterOf('leaf', box([8, 5, 4], [-4, -2.5, -2]));
  const crowded: Mold = {
    ...mold,
    title: 'The hedgerow collection of the village studio '.repeat(3).slice(0, 120),
    revision: 'second-proof-with-corrections',
    masters: [master],
    placements: ring(master, 40, 50).map((one, i) => ({ ...one, id: name(i + 1) })),
  };

  test('keeps the margins of every page, and names each placement by its end', async () => {
    const sheet = await sheetOf(crowded);
    const texts = pageTexts(sheet);
    for (let page = 1; page <= texts.length; page++) {
      const [left, right] = freeSides(renderPage(sheet, page, 40));
      expect(Math.min(left, right) * 210).toBeGreaterThan(11);
    }
    for (let i = 1; i <= 40; i++) expect(texts.join('')).toMatch(new RegExp(`-${i}\\b`));
  });
});

describe.runIf(hasPoppler())('what a sheet says beyond its drawings', () => {
  const wordsOf = async (own: Build): Promise<string> =>
    pageTexts(await shopSheet(own, fonts))
      .join(' ')
      .replaceAll(/\s+/g, ' ');

  test('what to do about several findings of one kind is said once, after them', async () => {
    const thin = ['snail', 'leaf', 'seed'].map((subject) => thinCover(subject));
    const report = joinReport('', 'metric', [{ findings: thin }]);
    const words = await wordsOf({ ...build(placedMold()), report });
    for (const subject of ['snail', 'leaf', 'seed'])
      expect(words).toContain(`${subject} leaves 1.00 mm (0.039 in)`);
    expect(words.split(sayFinding(thin[0], 'metric').remedy)).toHaveLength(2);
  });

  test('each build-up has its number, place, size and height', async () => {
    // 6 x 4 x 3 mm about (30, 40), printed about its own middle.
    const solid = solidOf('build-up-04-2', box([6, 4, 3], [-3, -2, 0]), {
      role: 'build-up',
      title: 'build-up 4-2 under leaf-1',
      toMold: translation(30, 40, 0),
    });
    const words = await wordsOf({ ...build(placedMold()), solids: [await exportSolid(solid)] });
    expect(words).toContain(
      '4-2 under leaf-1 50.00 mm (1.969 in) 53.1° 6.0 x 4.0 mm (0.24 x 0.16 in) 3.00 mm (0.118 in)',
    );
  });

  test('silicone for poured halves is their volume, by weight where the plan knows its density', async () => {
    const half = await exportSolid(solidOf('lower-half', box([100, 50, 20]), { title: 'lower half' }));
    const poured: Mold = {
      ...placedMold(),
      process: 'poured',
      bench: { rubber: { densityKgM3: 1100 } },
    };
    const words = await wordsOf({ ...build(poured), solids: [half] });
    expect(words).toContain(
      'For the lower half; add what stays in the cup. 100.000 cm3 (6.1024 in3), 110.00 g',
    );
  });
});

describe.runIf(hasPoppler())('the sheet speaks of what its process has', () => {
  const wordsOf = async (changes: Partial<Mold>) =>
    pageTexts(await sheetOf({ ...placedMold(), ...changes }))
      .join(' ')
      .replaceAll(/\s+/g, ' ');
  const closed = 'A closed hot can stores force';
  const hot = 'What goes into the hot can (sprue form) is bought';

  test('of the hot can, and of what lies in it, for rubber', async () => {
    const words = await wordsOf({
      process: 'rubber',
      bench: { closing: { bolts: { size: '3/8', grade: 'grade 5', count: 6 } } },
    });
    for (const of of [closed, hot, 'fumes from curing rubber', 'Shorten the cure', '3/8, grade 5'])
      expect(words).toContain(of);
    expect(words).not.toContain('grade grade');
  });

  test.each(['rigid', 'poured'] as const)('of no can where halves are %s', async (process) => {
    const words = await wordsOf({ process });
    for (const of of [
      closed,
      'hot can',
      'curing rubber',
      'Shorten the cure',
      'cut the notch',
      'loose bosses',
    ])
      expect(words).not.toContain(of);
    expect(words).toContain('Molten metal and water explode');
    expect(words).toContain('If a casting is not right');
  });

  test('what the plan is found to have comes first of the causes, with a mark', async () => {
    const words = await wordsOf({ process: 'rubber' });
    expect(words).toContain('* Wall or cover is too thin.');
    expect(words.match(/\* (?=[A-Z])/g)).toHaveLength(1);
  });
});

describe.runIf(hasPoppler())('the sheet of a plan for fixtures alone', () => {
  const boss = {
    id: 'boss-1',
    kind: 'dome',
    x: 40,
    y: 0,
    turnRad: 0,
    size: '8',
    acrossFlats: 0,
    rootDepth: 4,
    headRadius: 4,
    headHeight: 4,
    clearance: 0,
  } as const;
  const bare: Mold = { ...exampleMold(), bosses: [boss] };

  test('has no masters to lay in, nothing to melt and no pours to record', async () => {
    const pages = pageTexts(await sheetOf({ ...bare, bosses: [], tabs: [], notches: [] }));
    // Front, order of work with the side view, findings.
    expect(pages).toHaveLength(3);
    const words = pages.join(' ').replaceAll(/\s+/g, ' ');
    for (const of of ['Lay the masters', 'Pour record', 'Metal to melt', 'Plan view 1:1'])
      expect(words).not.toContain(of);
    expect(words).toContain('Try the center sprue form');
    expect(words).toContain('Side view');
    expect(words).not.toMatch(/\b0 (placements|masters|bosses|build-ups)/);
  });

  test('says and draws where its bosses stand', async () => {
    const words = pageTexts(await sheetOf(bare)).join(' ');
    for (const { id } of bare.bosses) expect(words).toContain(id);
    expect(words).toContain('Plan view 1:1');
    expect(words).not.toContain('Lay the masters');
  });
});

describe.runIf(hasPoppler())('the plan view takes as few pages as it can', () => {
  // Letter leaves 191.9 x 227.4 mm upright and 255.4 x 163.9 mm turned: 9 in goes on two turned pages, 7 in on one.
  test.each([
    ['Letter', 7, 1],
    ['Letter', 8, 2],
    ['Letter', 9, 2],
    ['A4', 9, 2],
    ['Letter', 12, 4],
  ] as const)('on %s, a disc of %d in takes %d', async (paper, inches, count) => {
    const mold = placedMold();
    const own: Mold = { ...mold, paper, disc: { ...mold.disc, radius: 12.7 * inches } };
    const pages = pageTexts(await sheetOf(own)).filter((text) => text.includes('Plan view 1:1'));
    expect(pages).toHaveLength(count);
  });
});

test('names that count up are one run', () => {
  expect(runs(['leaf-1', 'leaf-2', 'leaf-3', 'seed', 'leaf-5', 'snail-2-9', 'snail-2-10'])).toBe(
    'leaf-1 to 3, seed, leaf-5, snail-2-9 to 10',
  );
  expect(runs([])).toBe('');
});

test('the same build gives the same bytes', async () => {
  expect(Buffer.compare(await sheetOf(placedMold()), await sheetOf(placedMold()))).toBe(0);
});

test('letters outside the usual alphabets do no harm, and long names are broken', async () => {
  const title = 'Żółw 蝸牛 <b>&'.repeat(20);
  expect((await sheetOf({ ...placedMold(), title })).length).toBeGreaterThan(1000);
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
