import { describe, expect, it } from 'vitest';
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
