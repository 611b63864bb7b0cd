import { describe, expect, it } from 'vitest';
import { areasOf, codesOf, dxf, expectArea, light, line, lost } from './drawings.ts';

describe('DXF entities have the areas of their formulas', () => {
  const square = [...line(0, 0, 10, 0), ...line(0, 10, 10, 10), ...line(10, 0, 10, 10), ...line(0, 10, 0, 0)];

  it('joins lines drawn in any order and direction', () => expectArea(dxf(square, 4), 100, 1e-6));

  it('reads inches', () => {
    expect(areasOf(dxf(square, 1))[0]).toBeCloseTo(100 * 25.4 ** 2, 3);
  });

  it('takes numbers as mm where the file does not say, and says so', () => {
    const outcome = dxf(square);
    expect(codesOf(outcome)).toEqual(['outline.unit-assumed']);
    expect(areasOf(outcome)[0]).toBeCloseTo(100, 6);
  });

  it('reads circles and ellipses', () => {
    const circle: [number, string | number][] = [
      [0, 'CIRCLE'],
      [10, 3],
      [20, 4],
      [40, 12],
    ];
    expectArea(dxf(circle, 4), Math.PI * 144, lost(12));
    const ellipse: [number, string | number][] = [
      [0, 'ELLIPSE'],
      [10, 0],
      [20, 0],
      [11, 8],
      [21, 9],
      [40, 0.5],
      [41, 0],
      [42, 6.283185307179586],
    ];
    expectArea(dxf(ellipse, 4), (Math.PI * (64 + 81)) / 2, lost(13));
  });

  it('reads an arc with its chord: half a disc', () => {
    const arc: [number, string | number][] = [
      [0, 'ARC'],
      [10, 0],
      [20, 0],
      [40, 5],
      [50, 270],
      [51, 90],
    ];
    const outcome = dxf([...arc, ...line(0, 5, 0, -5)], 4);
    expectArea(outcome, (Math.PI * 25) / 2, lost(5));
    expect(Math.max(...(outcome.paths ?? [])[0].map(([x]) => x))).toBeCloseTo(5, 9);
  });

  // Bulge 1 is a half circle: two of them make a disc; tan(angle / 4) = 1 for a half turn.
  it('reads bulges, also clockwise ones', () => {
    expectArea(
      dxf(
        light(1, [
          [0, 0, 1],
          [10, 0, 1],
        ]),
        4,
      ),
      Math.PI * 25,
      lost(5),
    );
    const quarter = Math.tan(Math.PI / 8);
    expectArea(
      dxf(
        light(1, [
          [5, 0, quarter],
          [0, 5, 0],
          [0, 0, 0],
        ]),
        4,
      ),
      (Math.PI * 25) / 4,
      lost(5),
    );
    // Clockwise: the square loses the quarter discs instead. Chords of a hollow side give more area, not less.
    const hollow = areasOf(
      dxf(
        light(1, [
          [5, 0, -quarter],
          [0, 5, 0],
          [-5, -5, 0],
        ]),
        4,
      ),
    )[0];
    const round = areasOf(
      dxf(
        light(1, [
          [5, 0, quarter],
          [0, 5, 0],
          [-5, -5, 0],
        ]),
        4,
      ),
    )[0];
    const segment = (Math.PI * 25) / 4 - 12.5;
    expect(Math.abs(round - hollow - 2 * segment)).toBeLessThan(2 * lost(5));
  });

  it('reads POLYLINE with VERTEX and SEQEND', () => {
    const vertex = (x: number, y: number, bulge: number): [number, string | number][] => [
      [0, 'VERTEX'],
      [10, x],
      [20, y],
      [42, bulge],
    ];
    const polyline: [number, string | number][] = [
      [0, 'POLYLINE'],
      [66, 1],
      [70, 1],
      ...vertex(0, 0, 1),
      ...vertex(10, 0, 1),
      [0, 'SEQEND'],
    ];
    expectArea(dxf(polyline, 4), Math.PI * 25, lost(5));
  });

  it('says what it leaves out, and stops where nothing is left', () => {
    const spline: [number, string | number][] = [[0, 'SPLINE']];
    expect(codesOf(dxf([...spline, ...square], 4))).toEqual(['outline.left-out']);
    expect(codesOf(dxf(spline, 4))).toEqual(['outline.left-out', 'outline.empty']);
  });
});
