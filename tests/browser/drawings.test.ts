import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { svgText } from '../../src/export/svg.ts';
import { runCompiled } from '../cli/compiled.ts';
import { workbench } from '../cli/workbench.ts';
import { sample } from '../export/drawings.ts';
import { connectBrowser } from './connect-browser.ts';

// A browser draws the flat drawings and measures them on its screen, 96 px to the inch (CSS Values 4, 5.2).

const bench = workbench();
/** How near the screen's size must come, mm. */
const within = 0.01;

let browser: Browser;
beforeAll(async () => {
  browser = await connectBrowser();
});
afterAll(() => browser?.close());

interface Shape {
  readonly layer: string;
  readonly name: string;
  /** Of the box round its middle line, on the screen, mm. */
  readonly width: number;
  readonly height: number;
  readonly middle: readonly [number, number];
  readonly arcs: number;
}

/** Every shape of an SVG file as it stands on the screen, and how much of the sheet is free round them all, mm. */
async function measured(path: string): Promise<{ shapes: Shape[]; free: number }> {
  const page = await browser.newPage({ viewport: { width: 1200, height: 1200 } });
  await page.goto(pathToFileURL(path).href);
  const found = await page.evaluate(() => {
    const mmPerPixel = 25.4 / 96;
    const shapes = [...document.querySelectorAll<SVGGeometryElement>('circle, path')].map((shape) => {
      const { a, d, e, f } = shape.getScreenCTM() ?? new DOMMatrix([0, 0, 0, 0, 0, 0]);
      const { x, y, width, height } = shape.getBBox();
      return {
        layer: shape.parentElement?.id ?? '',
        name: shape.tagName,
        width: width * a * mmPerPixel,
        height: height * d * mmPerPixel,
        middle: [((x + width / 2) * a + e) * mmPerPixel, ((y + height / 2) * d + f) * mmPerPixel] as const,
        arcs: (shape.getAttribute('d') ?? '').split('A').length - 1,
      };
    });
    const root = document.documentElement as unknown as SVGSVGElement;
    const { x, y, width, height } = root.getBBox();
    const sheet = root.getBoundingClientRect();
    const edges = [x, y, sheet.width * mmPerPixel - x - width, sheet.height * mmPerPixel - y - height];
    return { shapes, free: Math.min(...edges) };
  });
  await page.close();
  return found;
}

const near = (value: number, expected: number): boolean => Math.abs(value - expected) < within;

const isBar = ({ layer, width, height }: Shape): boolean =>
  layer === 'engrave' && height === 0 && near(width, 100);

it('the check bar is 100 mm on the screen; circles, arcs and slots have the size of the drawing', async () => {
  const { shapes } = await measured(bench.put('sample.svg', svgText(sample)));
  expect(shapes.filter(isBar)).toHaveLength(1);
  const circles = shapes.filter(({ name }) => name === 'circle');
  expect(circles.map(({ layer }) => layer)).toEqual(['cut', 'cut']);
  for (const [i, diameter] of [120, 40].entries()) {
    expect(circles[i].width).toSatisfy((width: number) => near(width, diameter));
    expect(circles[i].height).toSatisfy((height: number) => near(height, diameter));
  }
  const bent = shapes.filter(({ arcs }) => arcs > 0);
  expect(bent.map(({ layer, arcs }) => [layer, arcs])).toEqual([
    ['cut', 2],
    ['engrave', 1],
  ]);
  // A slot of two half rounds of radius 5, 20 mm apart, turned by 0.3 rad; an arc of radius 50 from -0.4 to 0.7 rad.
  const [round, bow] = bent;
  expect(round.width).toSatisfy((width: number) => near(width, 20 * Math.cos(0.3) + 10));
  expect(round.height).toSatisfy((height: number) => near(height, 20 * Math.sin(0.3) + 10));
  expect(bow.width).toSatisfy((width: number) => near(width, 50 * (1 - Math.cos(0.7))));
  expect(bow.height).toSatisfy((height: number) => near(height, 50 * (Math.sin(0.4) + Math.sin(0.7))));
});

const plan = bench.put(
  'charms.yaml',
  'title: Charms\nprocess: rubber\ndisc: { diameter: 6 in, lower: 10, upper: 10 }\nsprue: { hole: 20, draft: 3 }\n' +
    'masters: { bar: { length: 24, width: 10, above: 2, below: 2 } }\n' +
    'placements: [{ master: bar, ring: { count: 2, radius: 44, start: 45 } }]\n' +
    'registration:\n  bosses:\n' +
    '    - { kind: dome, size: 9, at: { radius: 62, angle: 90 } }\n' +
    '    - { kind: dome, size: 7, at: { radius: 62, angle: 180 } }\n' +
    '    - { kind: dome, size: 9, at: { radius: 62, angle: 270 } }\n',
);

it('so have the jig and the layout plate of a 6 in disc, their holes where the plan has the bosses', async () => {
  const { code } = await runCompiled(
    ...['build', plan, '--out', bench.folder, '--quiet', '--formats', 'svg'],
    ...['--only', 'layout-plate', 'registration-jig'],
  );
  expect(code).toBe(0);
  for (const id of ['layout-plate', 'registration-jig']) {
    const { shapes, free } = await measured(bench.path(`charms/cut/${id}.svg`));
    expect(shapes.filter(isBar)).toHaveLength(1);
    expect(free).toBeGreaterThan(1);
    const circles = shapes.filter(({ layer, name }) => layer === 'cut' && name === 'circle');
    const holes = circles.filter(({ width }) => width < 15).map(({ middle }) => middle);
    expect(holes).toHaveLength(3);
    // 124 mm between the first and the third, both on one upright; the second 62 mm to their left.
    const [[x1, y1], [x2, y2], [x3, y3]] = holes;
    expect([x3 - x1, y3 - y1, x1 - x2, y2 - y1].map((value) => Number(value.toFixed(2)) + 0)).toEqual([
      ...[0, 124, 62, 62],
    ]);
    const cut = shapes.filter(({ layer }) => layer === 'cut');
    // The index mark takes a bite out of the rim at the right; from top to bottom it is whole.
    if (id === 'layout-plate')
      expect(Math.max(...cut.map(({ height }) => height))).toSatisfy((height: number) => near(height, 152.4));
    // The rim round from one side of the index mark to the other.
    expect(cut.some(({ arcs }) => arcs > 0)).toBe(true);
  }
});
