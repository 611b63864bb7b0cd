import { describe, expect, it } from 'vitest';
import { readOutline } from '../../../src/mesh/index.ts';
import { bytes, codesOf, dxf, expectArea, light, svg } from './drawings.ts';

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
    expect(wide.findings[0].values.measured).toBeCloseTo(Math.hypot(10, 10), 9);
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
    ['empty.svg', '', 'xml'],
    ['cut.svg', '<svg width="10mm" height="10mm"><rect width="5"', 'xml'],
    ['open.svg', '<svg width="10mm" height="10mm"><rect width="5" height="5"/>', 'xml'],
    ['page.svg', '<html><body/></html>', 'root'],
    ['text.svg', 'hello', 'xml'],
    ['entity.svg', '<!DOCTYPE svg [<!ENTITY a "b">]><svg>&a;</svg>', 'xml'],
    ['path.svg', '<svg><path d="M 0 0 L 1"/></svg>', 'path'],
    ['lead.svg', '<svg><path d="L 1 1"/></svg>', 'path'],
    ['huge.svg', '<svg><path d="M 1e400 0 L 1 1 L 2 5 z"/></svg>', 'bounds'],
    ['turn.svg', '<svg><rect width="1" height="1" transform="twirl(3)"/></svg>', 'transform'],
    ['number.svg', '<svg><circle r="wide"/></svg>', 'length'],
    ['empty.dxf', '', 'cut-off'],
    ['cut.dxf', '0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n0\n20', 'cut-off'],
    ['noeof.dxf', '0\nSECTION\n2\nENTITIES\n0\nENDSEC\n', 'cut-off'],
    ['code.dxf', '0\nSECTION\nabc\nENTITIES\n0\nENDSEC\n0\nEOF\n', 'group-code'],
    ['binary.dxf', 'AutoCAD Binary DXF\r\n\u001a\0', 'binary-dxf'],
    ['none.dxf', '0\nSECTION\n2\nHEADER\n0\nENDSEC\n0\nEOF\n', 'no-entities'],
  ])('%s gives one stop', (name, text, which) => {
    const outcome = readOutline(bytes(text), name);
    expect(outcome.paths).toBeUndefined();
    expect(codesOf(outcome)).toEqual(['outline.unreadable']);
    expect(outcome.findings[0].severity).toBe('stop');
    expect(outcome.findings[0].values).toMatchObject({ file: name, which });
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
      '<svg width="10mm" height="10mm" viewBox="0 0 10 10"><style>.a,g>#b:not(i){fill:red}@media x{}</style>' +
        '<symbol id="s" viewBox="0 0 9 9"><rect class="a" width="9%" height="2mm"/></symbol><use href="#s"/>' +
        '<path transform="rotate(3)" style="display:inline" d="M0 0a5 5 0 0 1 9 0z"/></svg>',
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
