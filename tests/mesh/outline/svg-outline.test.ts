import { describe, expect, it, test } from 'vitest';
import { areasOf, codesOf, expectArea, lost, svg } from './drawings.ts';

describe('SVG shapes have the areas of their formulas', () => {
  it.each([
    ['<rect x="1" y="2" width="30" height="20"/>', 600, 1e-6],
    // Rounded corners of 5 take (4 - pi) r2.
    ['<rect width="30" height="20" rx="5"/>', 600 - (4 - Math.PI) * 25, lost(5)],
    ['<circle cx="50" cy="50" r="12"/>', Math.PI * 144, lost(12)],
    ['<ellipse cx="50" cy="50" rx="12" ry="5"/>', Math.PI * 60, lost(12)],
    ['<polygon points="0,0 10,0 10,10 0,10"/>', 100, 1e-9],
    ['<polyline points="0 0 10 0 10 10 0 10 0 0"/>', 100, 1e-9],
    ['<path d="M0 0h10v10h-10z"/>', 100, 1e-9],
    // Two half circles of radius 5.
    ['<path d="M0 5a5 5 0 0 1 10 0a5 5 0 0 1 -10 0z"/>', Math.PI * 25, lost(5)],
    // An ellipse turned by 30 degrees keeps its area.
    ['<path d="M10 20 A 12 5 30 1 1 10.001 20 z"/>', Math.PI * 60, lost(12) + 0.05],
    // Under a parabola: two thirds of the box round it. Control point at twice the height.
    ['<path d="M0 0 Q 15 30 30 0 z"/>', (2 / 3) * 30 * 15, 0.01 * 45],
    // The same parabola as a cubic: control points two thirds of the way.
    ['<path d="M0 0 C 10 20 20 20 30 0 z"/>', (2 / 3) * 30 * 15, 0.01 * 45],
    [
      '<g transform="translate(3 4) scale(2)"><g transform="rotate(30 5 5)"><rect width="5" height="4"/></g></g>',
      80,
      1e-6,
    ],
    ['<rect width="5" height="4" transform="matrix(2 0 1 3 7 8)"/>', 120, 1e-6],
    ['<rect width="5" height="4" transform="skewX(20)"/>', 20, 1e-6],
  ])('%s', (inner, area, margin) => {
    expectArea(svg(inner), area, margin);
  });

  it('turns y up, and keeps places', () => {
    const { paths } = svg('<rect x="10" y="20" width="30" height="5"/>');
    const ys = (paths ?? [])[0].map(([, y]) => y);
    expect(Math.max(...ys)).toBeCloseTo(-20, 9);
    expect(Math.min(...ys)).toBeCloseTo(-25, 9);
  });

  it('makes holes clockwise and islands in them counter-clockwise, whichever way they are drawn', () => {
    const outcome = svg(
      '<rect width="40" height="40"/><rect x="10" y="10" width="20" height="20"/><rect x="15" y="15" width="5" height="5"/>',
    );
    expect(areasOf(outcome).map(Math.round)).toEqual([1600, -400, 25]);
  });
});

describe('SVG units: 1 in = 25.4 mm = 96 px = 72 pt = 6 pc', () => {
  it.each([
    ['width="2in" height="2in" viewBox="0 0 100 100"', 0.508],
    ['width="100" height="100"', 25.4 / 96],
    ['width="96px" height="96px" viewBox="0 0 96 96"', 25.4 / 96],
    ['width="10cm" height="10cm" viewBox="0 0 100 100"', 1],
    ['width="72pt" height="72pt" viewBox="0 0 72 72"', 25.4 / 72],
    ['viewBox="0 0 100 100"', 25.4 / 96],
    // Fitted whole, as the standard does unless told otherwise: the smaller scale.
    ['width="200mm" height="100mm" viewBox="0 0 100 100"', 1],
  ])('%s', (head, scale) => {
    const outcome = svg('<rect width="10" height="10"/>', head);
    expect(areasOf(outcome)[0]).toBeCloseTo(100 * scale * scale, 6);
  });

  it('says when no real unit is given', () => {
    expect(codesOf(svg('<rect width="10" height="10"/>', 'viewBox="0 0 100 100"'))).toEqual([
      'outline.unit-assumed',
    ]);
  });
});

/** One user unit is 1 mm in these drawings; 1 mm written out is 96 / 25.4 of them. */
const perMm = 96 / 25.4;

describe('SVG numbers, transforms and units as the standard lets them be written', () => {
  it.each([
    ['<rect width="5" height="4" transform="translate(10-5)"/>', 20],
    ['<rect width="50" height="40" transform="scale(.5.5)"/>', 500],
    ['<rect width="5" height="4" transform="translate(1e1,-5),rotate(30 5-5)scale(2)"/>', 80],
    ['<polygon points="10 20 30-5 40 20"/>', (30 * 25) / 2],
    ['<polygon points="0,0,10.,0,10.,10."/>', 50],
    ['<rect width="10mm" height="1cm"/>', 100 * perMm * perMm],
    ['<rect width="50%" height="10%"/>', 500],
    ['<rect width="5" height="4" style="transform: translate(3px, 1mm) rotate(.25turn) scale(2)"/>', 80],
    ['<rect style="width: 5px; height: 4px"/>', 20],
  ])('%s', (inner, area) => {
    expectArea(svg(inner), area, 1e-6);
  });

  it('puts shapes where the transform says', () => {
    const { paths } = svg('<rect width="1" height="2" transform="translate(10-5)"/>');
    const [xs, ys] = [0, 1].map((axis) => (paths ?? [])[0].map((point) => point[axis]));
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([10, 11, 3, 5]);
  });

  it.each([
    '<rect width="3em" height="4"/>',
    '<rect width="calc(1px + 2px)" height="4"/>',
    '<rect width="5" height="4" transform="translate(1 2 3)"/>',
    '<rect width="5" height="4" transform="rotate(30)" transform-origin="center"/>',
    '<polygon points="0 0 10 wide"/>',
  ])('stops at %s', (inner) => {
    expect(codesOf(svg(inner))).toEqual(['outline.unreadable']);
  });
});

describe('SVG shapes that are not seen are not read', () => {
  const seen = '<rect width="10" height="10"/>';

  it.each([
    '<circle r="3" display="none"/>',
    '<g style="display: none"><circle r="3"/></g>',
    '<g visibility="hidden"><circle r="3"/></g>',
    '<circle r="3" style="visibility:collapse"/>',
    '<defs><circle r="3"/></defs>',
    '<symbol id="s"><circle r="3"/></symbol>',
    '<style>.gone { display: none }</style><circle r="3" class="other gone"/>',
    '<circle r="3" id="a"/><style>g #b, svg > #a { visibility: hidden }</style>',
    '<style>/* all */ circle:not(.kept) { display: none !important }</style><circle r="3" style="display:inline"/>',
    '<style>.a { display: none } circle { display: inline }</style><circle r="3" class="a"/>',
  ])('%s', (hidden) => {
    expectArea(svg(hidden + seen), 100, 1e-9);
  });

  it.each([
    // What is shown again in something hidden is seen.
    '<g visibility="hidden"><rect width="10" height="10" visibility="visible"/></g>',
    '<style>rect { display: none } #a { display: inline }</style><rect id="a" width="10" height="10"/>',
    '<style>.b { visibility: hidden }</style><rect class="b" style="visibility: visible" width="10" height="10"/>',
    // A style of a sheet counts for more than an attribute.
    '<style>.b { display: inline }</style><rect class="b" display="none" width="10" height="10"/>',
    '<style>@font-face { font-family: x } rect { fill: none; stroke: black }</style><rect width="10" height="10"/>',
  ])('but this is: %s', (inner) => {
    expectArea(svg(inner), 100, 1e-9);
  });

  it('says what it leaves out because nothing of it is painted, and what rules it did not follow', () => {
    const box = svg(`<path d="M0 0h24v24H0z" fill="none"/>${seen}`);
    expect(codesOf(box)).toEqual(['outline.left-out']);
    expect(box.findings[0].values.kinds).toContain('1 path without fill and stroke');
    expect(areasOf(box)).toEqual([100]);
    const printed = svg(`<style>@media print { rect { display: none } }</style>${seen}`);
    expect(codesOf(printed)).toEqual(['outline.left-out']);
    expect(printed.findings[0].values.kinds).toContain('1 @media');
    const odd = svg(`<style>rect:frobnicated { display: none }</style>${seen}`);
    expect(odd.findings[0].values.kinds).toContain('1 style rule');
  });
});

describe('SVG pages within the page, and shapes used again', () => {
  it.each([
    // Ten units to the side of 50: five times.
    ['<svg x="10" y="20" width="50" height="50" viewBox="0 0 10 10"><rect width="2" height="3"/></svg>', 150],
    ['<svg viewBox="0 0 10 10"><rect width="50%" height="3"/></svg>', 1500],
    [
      '<defs><rect id="r" width="2" height="3"/></defs><use href="#r" x="4"/><use xlink:href="#r" y="9"/>',
      12,
    ],
    ['<rect id="r" width="2" height="3"/><use href="#r" transform="translate(20-5)scale(2)"/>', 30],
    [
      '<symbol id="s" viewBox="0 0 10 10"><rect width="2" height="3"/></symbol><use href="#s" width="20" height="20"/>',
      24,
    ],
    // An inner page is fitted whole and set in the middle.
    ['<svg width="60" height="20" viewBox="0 0 10 10"><rect width="2" height="3"/></svg>', 24],
  ])('%s', (inner, area) => {
    expectArea(svg(inner), area, 1e-6);
  });

  it('sets a page that is fitted in the middle of its place', () => {
    const { paths } = svg(
      '<svg x="5" width="60" height="20" viewBox="0 0 10 10"><rect width="2" height="3"/></svg>',
    );
    const xs = (paths ?? [])[0].map(([x]) => x);
    expect(Math.min(...xs)).toBeCloseTo(5 + 20, 9);
    expect(Math.max(...xs)).toBeCloseTo(5 + 20 + 4, 9);
  });

  it('says when what is used is not there or holds itself, and stops at a flood', () => {
    const seen = '<rect width="10" height="10"/>';
    for (const inner of [
      '<use href="#none"/>',
      '<use href="other.svg#a"/>',
      '<g id="g"><use href="#g"/></g>',
    ]) {
      const outcome = svg(inner + seen);
      expect(codesOf(outcome)).toEqual(['outline.left-out']);
      expect(outcome.findings[0].values.kinds).toContain('1 use');
      expect(areasOf(outcome)).toEqual([100]);
    }
    const tenTimes = (id: number) => `<g id="g${id}">${`<use href="#g${id - 1}"/>`.repeat(10)}</g>`;
    const flood = [1, 2, 3, 4, 5, 6, 7, 8].map(tenTimes).join('');
    const outcome = svg(`<defs><rect id="g0" width="1" height="1"/>${flood}</defs><use href="#g8"/>`);
    expect(codesOf(outcome)).toEqual(['outline.unreadable']);
    expect(codesOf(svg('<g>'.repeat(100_000) + '</g>'.repeat(100_000)))).toEqual(['outline.unreadable']);
  });
});

test('the points of a drawing are counted, also of what is used again, and more elements than a drawing has refused', () => {
  const round = '<g id="c"><circle cx="50" cy="50" r="40"/></g>';
  const used = svg(`${round}${'<use href="#c"/>'.repeat(2000)}`);
  expect(used.findings).toMatchObject([
    { code: 'outline.too-many-points', values: { what: 'points', limit: 20_000 } },
  ]);
  const flood = svg('<g/>'.repeat(50_000));
  expect(flood.findings).toMatchObject([
    { code: 'outline.unreadable', values: { which: 'elements', limit: 50_000 } },
  ]);
});
