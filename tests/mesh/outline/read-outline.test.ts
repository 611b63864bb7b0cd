import { describe, expect, it } from 'vitest';
import { type OutlineOutcome, readOutline, ringArea } from '../../../src/mesh/index.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const svg = (inner: string, head = 'width="100mm" height="100mm" viewBox="0 0 100 100"'): OutlineOutcome =>
  readOutline(bytes(`<svg xmlns="http://www.w3.org/2000/svg" ${head}>${inner}</svg>`), 'leaf.svg');
const codesOf = (outcome: OutlineOutcome): string[] => outcome.findings.map(({ code }) => code);
const areasOf = (outcome: OutlineOutcome): number[] => (outcome.paths ?? []).map(ringArea);
/** What inscribed chords of 0.01 mm sagitta may lose of a circle: at most 0.01 mm all along. */
const lost = (radius: number): number => 2 * Math.PI * radius * 0.01;

const expectArea = (outcome: OutlineOutcome, wanted: number, margin: number): void => {
  expect(outcome.findings).toEqual([]);
  const total = areasOf(outcome).reduce((sum, area) => sum + area, 0);
  expect(total).toBeLessThanOrEqual(wanted + 1e-6);
  expect(total).toBeGreaterThanOrEqual(wanted - margin);
};

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

/** A DXF text of an ENTITIES section; pairs of code and value. */
const dxf = (entities: readonly (readonly [number, string | number])[], unit?: number): OutlineOutcome => {
  const header: [number, string | number][] =
    unit === undefined
      ? []
      : [
          [0, 'SECTION'],
          [2, 'HEADER'],
          [9, '$INSUNITS'],
          [70, unit],
          [0, 'ENDSEC'],
        ];
  const pairs = [...header, [0, 'SECTION'], [2, 'ENTITIES'], ...entities, [0, 'ENDSEC'], [0, 'EOF']];
  return readOutline(bytes(`${pairs.flat().join('\r\n')}\r\n`), 'plate.dxf');
};

const line = (x1: number, y1: number, x2: number, y2: number): [number, string | number][] => [
  [0, 'LINE'],
  [10, x1],
  [20, y1],
  [11, x2],
  [21, y2],
];

const light = (
  flags: number,
  corners: readonly (readonly [number, number, number?])[],
): [number, string | number][] => [
  [0, 'LWPOLYLINE'],
  [90, corners.length],
  [70, flags],
  ...corners.flatMap(([x, y, bulge]): [number, number][] => [
    [10, x],
    [20, y],
    ...(bulge === undefined ? [] : [[42, bulge] as [number, number]]),
  ]),
];

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

describe('open and crossing outlines', () => {
  it('closes a small gap and says so; leaves out what is wide open', () => {
    const small = dxf(
      light(0, [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
        [0, 0.5],
      ]),
      4,
    );
    expect(codesOf(small)).toEqual(['outline.gap-closed']);
    expect(small.paths).toHaveLength(1);
    const wide = dxf(
      [
        ...light(0, [
          [0, 0],
          [10, 0],
          [10, 10],
        ]),
        ...light(1, [
          [20, 0],
          [30, 0],
          [30, 9],
        ]),
      ],
      4,
    );
    expect(codesOf(wide)).toEqual(['outline.open-path']);
    expect(wide.findings[0].measured?.value).toBeCloseTo(Math.hypot(10, 10), 9);
    expect(wide.paths).toHaveLength(1);
  });

  it('stops where an outline crosses itself or another, with the place', () => {
    const bow = svg('<polygon points="0,0 10,10 10,0 0,10"/>');
    expect(bow.paths).toBeUndefined();
    expect(codesOf(bow)).toEqual(['outline.crosses']);
    expect(bow.findings[0].place).toEqual([5, -5, 0]);
    expect(codesOf(svg('<rect width="10" height="10"/><rect x="5" y="5" width="10" height="10"/>'))).toEqual([
      'outline.crosses',
    ]);
    expect(codesOf(svg('<path d="M0 0H10H5V5z"/>'))).toEqual(['outline.crosses']);
  });

  it('doubts what is larger than any disc', () => {
    expect(codesOf(svg('<rect width="1500" height="90"/>'))).toEqual(['outline.size']);
  });
});

describe('bad files', () => {
  it.each([
    ['empty.svg', ''],
    ['cut.svg', '<svg width="10mm" height="10mm"><rect width="5"'],
    ['open.svg', '<svg width="10mm" height="10mm"><rect width="5" height="5"/>'],
    ['page.svg', '<html><body/></html>'],
    ['text.svg', 'hello'],
    ['entity.svg', '<!DOCTYPE svg [<!ENTITY a "b">]><svg>&a;</svg>'],
    ['path.svg', '<svg><path d="M 0 0 L 1"/></svg>'],
    ['lead.svg', '<svg><path d="L 1 1"/></svg>'],
    ['huge.svg', '<svg><path d="M 1e400 0 L 1 1 L 2 5 z"/></svg>'],
    ['turn.svg', '<svg><rect width="1" height="1" transform="twirl(3)"/></svg>'],
    ['number.svg', '<svg><circle r="wide"/></svg>'],
    ['empty.dxf', ''],
    ['cut.dxf', '0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n0\n20'],
    ['noeof.dxf', '0\nSECTION\n2\nENTITIES\n0\nENDSEC\n'],
    ['code.dxf', '0\nSECTION\nabc\nENTITIES\n0\nENDSEC\n0\nEOF\n'],
    ['binary.dxf', 'AutoCAD Binary DXF\r\n\u001a\0'],
    ['none.dxf', '0\nSECTION\n2\nHEADER\n0\nENDSEC\n0\nEOF\n'],
  ])('%s gives one stop', (name, text) => {
    const outcome = readOutline(bytes(text), name);
    expect(outcome.paths).toBeUndefined();
    expect(codesOf(outcome)).toEqual(['outline.unreadable']);
    expect(outcome.findings[0].severity).toBe('stop');
    expect(outcome.findings[0].says).toContain(name);
  });

  it('stops at nothing drawn, hidden things, and absurd size', () => {
    expect(codesOf(svg(''))).toEqual(['outline.empty']);
    expect(
      codesOf(svg('<defs><rect width="5" height="5"/></defs><g style="display:none"><circle r="4"/></g>')),
    ).toEqual(['outline.empty']);
    expect(codesOf(readOutline(new Uint8Array(20_000_001), 'big.svg'))).toEqual(['outline.too-large']);
  });

  it('reads UTF-16 with its mark, and a UTF-8 mark', () => {
    const text = '<svg width="10mm" height="10mm" viewBox="0 0 10 10"><rect width="5" height="5"/></svg>';
    const wide = new Uint8Array(2 + text.length * 2);
    wide.set([0xff, 0xfe]);
    for (let i = 0; i < text.length; i++) wide[2 + 2 * i] = text.charCodeAt(i);
    expectArea(readOutline(wide, 'wide.svg'), 25, 1e-9);
    expectArea(readOutline(bytes(`\ufeff${text}`), 'marked.svg'), 25, 1e-9);
  });

  it('never throws, whatever byte is changed', () => {
    const good = bytes(
      '<svg width="10mm" height="10mm" viewBox="0 0 10 10"><path transform="rotate(3)" d="M0 0a5 5 0 0 1 9 0z"/></svg>',
    );
    let outcomes = 0;
    for (let at = 0; at < good.length; at++) {
      for (const byte of [0, 32, 45, 57, 60, 101, 200]) {
        const bad = good.slice();
        bad[at] = byte;
        const { paths, findings } = readOutline(bad, 'bad.svg');
        // Either an outline, or a stop that says why not.
        if (paths || findings.some(({ severity }) => severity === 'stop')) outcomes++;
      }
    }
    expect(outcomes).toBe(good.length * 7);
  });
});
