import { SaxesParser } from 'saxes';
import { SVGPathData } from 'svg-pathdata';
import { describe, expect, test } from 'vitest';
import { dxfText } from '../../src/export/dxf.ts';
import { svgText } from '../../src/export/svg.ts';
import { boundsOfOutline } from '../../src/geometry/index.ts';
import { lettersOf } from '../../src/lettering/index.ts';
import { sample } from './drawings.ts';
import { readDxf } from './read-dxf.ts';

interface Tag {
  readonly name: string;
  readonly layer: string;
  readonly attributes: Readonly<Record<string, string>>;
}

/** Tags by an XML reader that is not ours. */
function tagsOf(text: string): Tag[] {
  const tags: Tag[] = [];
  let layer = '';
  const parser = new SaxesParser();
  parser.on('opentag', ({ name, attributes }) => {
    if (name === 'g') layer = attributes.id;
    tags.push({ name, layer, attributes });
  });
  parser.on('error', (error) => {
    throw error;
  });
  parser.write(text).close();
  return tags;
}

describe('SVG', () => {
  const text = svgText(sample);
  const tags = tagsOf(text);
  const on = (layer: string, name: string) => tags.filter((tag) => tag.layer === layer && tag.name === name);

  test('one user unit is 1 mm: size in mm and view box are the same numbers', () => {
    const [{ attributes }] = tags;
    const [width, height] = [Number.parseFloat(attributes.width), Number.parseFloat(attributes.height)];
    expect(attributes.width).toMatch(/mm$/);
    expect(attributes.viewBox).toBe(`0 0 ${width} ${height}`);
    expect(width).toBe(140);
  });

  test('layers by name; circles stay circles, arcs stay arcs of the same radius', () => {
    expect(on('cut', 'circle').map(({ attributes }) => Number(attributes.r))).toEqual([60, 20]);
    const arcs = on('cut', 'path').flatMap(({ attributes }) =>
      new SVGPathData(attributes.d).commands.filter(({ type }) => type === SVGPathData.ARC),
    );
    expect(arcs).toHaveLength(2);
    for (const bend of arcs) expect(bend).toMatchObject({ rX: 5, rY: 5, sweepFlag: 0 });
    const [circle] = on('cut', 'circle');
    const engraved = new SVGPathData(on('engrave', 'path')[0].attributes.d).commands;
    // From angle -0.4 about the circle's middle, with y down.
    const [{ x, y }] = engraved as unknown as { x: number; y: number }[];
    expect(x - Number(circle.attributes.cx)).toBeCloseTo(50 * Math.cos(0.4), 3);
    expect(y - Number(circle.attributes.cy)).toBeCloseTo(50 * Math.sin(0.4), 3);
    expect(on('score', 'path')).toHaveLength(1);
  });

  test('the check bars are 100 mm and 4 in', () => {
    const lengths = on('engrave', 'path').map(({ attributes }) => {
      const { minX, maxX } = new SVGPathData(attributes.d).getBounds();
      return maxX - minX;
    });
    for (const bar of [100, 101.6])
      expect(lengths.filter((length) => Math.abs(length - bar) < 1e-9)).toHaveLength(1);
  });

  test('bytes are the same each time; the title cannot break the XML', () => {
    expect(svgText(sample)).toBe(text);
    expect(text).toContain('<title>Sample &lt;1&gt; &amp; more</title>');
  });
});

describe('DXF, read by dxf-parser', () => {
  const text = dxfText(sample);
  const parsed = readDxf(text);

  test('mm, layers by name, and every entity', () => {
    expect(parsed.header.$INSUNITS).toBe(4);
    expect(Object.keys(parsed.tables.layer.layers)).toEqual(['cut', 'engrave', 'score']);
    const count = (type: string, layer: string): number =>
      parsed.entities.filter((one) => one.type === type && one.layer === layer).length;
    expect([count('CIRCLE', 'cut'), count('POLYLINE', 'cut'), count('ARC', 'engrave')]).toEqual([2, 1, 1]);
    expect(count('POLYLINE', 'score')).toBe(1);
    // Nothing is lost: as many as the drawing, its letters and the foot have.
    expect(parsed.entities.length).toBe(text.split(/\n0\n(?:CIRCLE|POLYLINE|ARC|LINE)\n/).length - 1);
    expect(text.endsWith('0\nEOF\n')).toBe(true);
  });

  test('arcs keep radius and angles, slots their bulges, the check bars their 100 mm and 4 in', () => {
    const { entities } = parsed;
    const arc = entities.find(({ type }) => type === 'ARC');
    expect(arc?.radius).toBe(50);
    expect((arc?.startAngle ?? 0) - 2 * Math.PI).toBeCloseTo(-0.4, 6);
    expect(arc?.endAngle).toBeCloseTo(0.7, 6);
    const slot = entities.find(({ type, layer }) => type === 'POLYLINE' && layer === 'cut');
    expect(slot?.shape).toBe(true);
    expect(slot?.vertices?.map(({ bulge = 0 }) => bulge)).toEqual([0, 1, 0, 1]);
    const lines = entities.filter(({ type }) => type === 'LINE');
    const spans = lines.map(({ vertices: [a, b] = [] }) => Math.hypot(b.x - a.x, b.y - a.y));
    for (const bar of [100, 101.6])
      expect(spans.filter((span) => Math.abs(span - bar) < 1e-9)).toHaveLength(1);
  });
});

test.each(['H', 'É'])('a capital %s is as high as asked for, standing on its place', (words) => {
  const { min, max } = boundsOfOutline(
    lettersOf({ words, at: [3, 4], height: 6, turnRad: 0, anchor: 'start' }),
  );
  expect(min[1]).toBeCloseTo(4, 9);
  expect(max[1] - min[1]).toBeCloseTo(6, 9);
});
