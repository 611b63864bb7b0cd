import { beforeAll, describe, expect, test } from 'vitest';
import { dxfText } from '../../../src/export/dxf.ts';
import { type Kernel, loadKernel } from '../../../src/kernel/index.ts';
import type { Drawing, Mold, Part } from '../../../src/mold/index.ts';
import { canParts } from '../../../src/parts/flat/can-parts.ts';
import { knifeStencil } from '../../../src/parts/flat/knife-stencil.ts';
import { cuttingOutline } from '../../../src/parts/supports/build-up-mark.ts';
import { areaWithin, type Dxf, readDxf } from '../../export/read-dxf.ts';
import { box } from '../../export/shapes.ts';
import { straightChannel } from '../../straight-channel.ts';
import { exampleMold } from '../example-mold.ts';

// What a cutter is given, read by dxf-parser, against closed forms of the fixtures.

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const drawn = (part: Part, changes: Partial<Mold>): Drawing[] =>
  part
    .units(exampleMold({ process: 'rubber', ...changes }))
    .flatMap((unit) => unit.run({ kernel }).drawings ?? []);

/** Read back whole: every entity the text has, in mm, on the three layers. */
function readBack(drawing: Drawing): Dxf {
  const text = dxfText(drawing);
  const dxf = readDxf(text);
  expect(dxf.header.$INSUNITS).toBe(4);
  expect(Object.keys(dxf.tables.layer.layers)).toEqual(['cut', 'engrave', 'score']);
  expect(dxf.entities).toHaveLength(text.split(/\n0\n(?:CIRCLE|POLYLINE|ARC|LINE)\n/).length - 1);
  expect(text).toMatch(/^[\n\x20-\x7e]*$/);
  return dxf;
}

const on = ({ entities }: Dxf, layer: string) => entities.filter((one) => one.layer === layer);
const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);

test('the spacer is one circle, collar and stop are two: pi (R2 - r2)', () => {
  const can = { diameter: 170, depth: 40 };
  const [spacer, collar, stop] = drawn(canParts, { bench: { can } }).map(readBack);
  // As much less and more as ISO 2768-1 m lets can and plate be off between 120 and 400.
  expect(on(spacer, 'cut').map(({ type, radius }) => [type, radius])).toEqual([['CIRCLE', 84.5]]);
  for (const ring of [collar, stop]) {
    const cut = on(ring, 'cut');
    expect(cut.map(({ type }) => type)).toEqual(['CIRCLE', 'CIRCLE']);
    const [inner, outer] = sorted(cut.map(areaWithin));
    expect(outer - inner).toBeCloseTo(Math.PI * (84.5 ** 2 - 75.25 ** 2), 6);
  }
});

test('slots of the stencil are closed, as wide as the channel and as long as its way; the index arc stays an arc', () => {
  const channel = straightChannel({
    id: 'gate',
    kind: 'gate',
    placement: 'a',
    from: [19, 0],
    to: [49, 40],
    width: 3,
    depth: 1.5,
    half: 'lower',
  });
  const [stencil] = drawn(knifeStencil, { channels: [channel] }).map(readBack);
  const slots = on(stencil, 'cut').filter(({ type }) => type === 'POLYLINE');
  expect(slots.map(({ shape }) => shape)).toEqual([true]);
  // From the well's edge, 30 mm across and 40 mm up: 50 mm long.
  expect(areaWithin(slots[0])).toBeCloseTo(3 * 50, 3);
  const arcs = stencil.entities.filter(({ type }) => type === 'ARC');
  expect(arcs.map(({ radius }) => radius)).toEqual([74]);
  const { startAngle = 0, endAngle = 0 } = arcs[0];
  expect((endAngle - startAngle + 2 * Math.PI) % (2 * Math.PI)).toBeCloseTo(0.1, 5);
});

describe('a cutting outline', () => {
  /** A block of 12 x 9 mm, 4 mm high, in the middle of the disc. */
  const outlineOf = (words: string): Dxf => {
    const shape = {
      id: 'build-up-01',
      title: `build-up 1 under ${words}`,
      words,
      subject: 'leaf',
      x: 0,
      y: 0,
      side: 1,
      estimated: false,
      units: 'metric',
    } as const;
    return kernel.scope((scope) => {
      const body = scope.fromMesh(box([12, 9, 4], [-6, -4.5, 0]), 'build-up');
      return readBack(cuttingOutline(scope, body, shape));
    });
  };

  test('is closed, of the area of the foot, with a contour for each millimeter of height', () => {
    const dxf = outlineOf('1');
    const cut = on(dxf, 'cut');
    expect(cut.map(({ type, shape }) => [type, shape])).toEqual([['POLYLINE', true]]);
    expect(areaWithin(cut[0])).toBeCloseTo(12 * 9, 3);
    const contours = on(dxf, 'score').filter(({ shape }) => shape);
    expect(contours.map(areaWithin).map((area) => Number(area.toFixed(2)))).toEqual([108, 108, 108]);
  });

  test.each(['“Äpfel” 3/8"', "snail's №7", 'Żółw 蝸牛 <b>&', '1"\n0\nEOF'])(
    'with a label such as %j is read back whole, and cut the same',
    (words) => {
      const dxf = outlineOf(words);
      expect(on(dxf, 'cut').map(areaWithin)).toEqual(on(outlineOf('1'), 'cut').map(areaWithin));
      expect(on(dxf, 'engrave').length).toBeGreaterThan(10);
    },
  );
});
