import { zipSync } from 'fflate';
import { describe, expect, it, test } from 'vitest';
import { codesOf, facesOf, meshXml, modelXml, read, relations, volumeOf } from '../mesh-files.ts';
import { component, components, item, object, pointsOf, read3mf, simple } from './models-3mf.ts';

describe('3MF that is read', () => {
  it('reads one object in its own unit', () => {
    const outcome = read3mf(simple);
    expect(outcome.findings).toEqual([]);
    expect(outcome.mesh?.unit).toBe('mm');
    expect(facesOf(outcome)).toBe(4);
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
  });

  // The six units of 3MF core 1.4, ST_Unit; millimeter where none is named.
  test.each([
    ['unit="micron"', 'micron'],
    ['unit="millimeter"', 'mm'],
    ['unit="centimeter"', 'cm'],
    ['unit="inch"', 'in'],
    ['unit="foot"', 'ft'],
    ['unit="meter"', 'm'],
    ['', 'mm'],
  ])('obeys %s', (head, unit) => {
    expect(read3mf(modelXml(object(1), item(1), head)).mesh?.unit).toBe(unit);
  });

  // 3MF core specification 1.4, 3.3: "m00 ... m32" are rows of a matrix that points, as rows, are multiplied by.
  it('multiplies points as rows from the left: turn, stretch and translation last', () => {
    // x -> y, y -> 2 z, z -> 3 x, then moved by 10, 20, 30.
    const outcome = read3mf(modelXml(object(1), item(1, '0 1 0 0 0 2 3 0 0 10 20 30')));
    expect(pointsOf(outcome)).toEqual([10, 20, 30, 10, 21, 30, 10, 20, 32, 13, 20, 30]);
    // The determinant is 6.
    expect(volumeOf(outcome)).toBeCloseTo(1, 12);
    expect(outcome.findings).toEqual([]);
  });

  it('applies a component before what it is part of, at every level', () => {
    const double = '2 0 0 0 2 0 0 0 2 0 0 0';
    const shift = '1 0 0 0 1 0 0 0 1 5 0 0';
    const outcome = read3mf(
      modelXml(
        object(1) +
          object(2, components(component(1, double))) +
          object(3, components(component(2, shift), component(1))),
        item(3, '0 1 0 -1 0 0 0 0 1 0 0 0'),
      ),
    );
    // Doubled, then moved by 5 along x, then turned by a quarter: the corner at x lands at y = 5 + 2.
    expect(pointsOf(outcome).slice(0, 12)).toEqual(
      [-0, 5, 0, -0, 7, 0, -2, 5, 0, -0, 5, 2].map((v) => v + 0),
    );
    expect(facesOf(outcome)).toBe(8);
    expect(volumeOf(outcome)).toBeCloseTo(8 / 6 + 1 / 6, 12);
    expect(outcome.findings).toEqual([]);
  });

  it('turns the faces of a mirrored mesh over, and says so', () => {
    const outcome = read3mf(modelXml(object(1), item(1, '-1 0 0 0 1 0 0 0 1 0 0 0')));
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
    expect(outcome.findings).toMatchObject([
      { code: 'mesh.mirrored', severity: 'note', values: { measured: 1 } },
    ]);
  });

  it('takes a mesh mirrored twice as it is', () => {
    const mirror = '-1 0 0 0 1 0 0 0 1 0 0 0';
    const outcome = read3mf(
      modelXml(object(1) + object(2, components(component(1, mirror))), item(2, mirror)),
    );
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
    expect(outcome.findings).toEqual([]);
  });

  it('reads several items into one, and says so', () => {
    const outcome = read3mf(modelXml(object(1), item(1) + item(1, '1 0 0 0 1 0 0 0 1 9 0 0')));
    expect(facesOf(outcome)).toBe(8);
    expect(codesOf(outcome)).toEqual(['mesh.several-solids']);
  });

  it('reads only what is to be built', () => {
    expect(facesOf(read3mf(modelXml(object(1) + object(2), item(2))))).toBe(4);
  });

  test.each(['support', 'solidsupport', 'surface', 'other'])(
    'leaves out an object of type %s, and says so',
    (type) => {
      const outcome = read3mf(
        modelXml(
          object(1) +
            object(2, meshXml, `type="${type}"`) +
            object(3, components(component(1), component(2)), 'type="support"'),
          item(3),
        ),
      );
      expect(facesOf(outcome)).toBe(4);
      expect(outcome.findings).toMatchObject([
        { code: 'mesh.skipped', severity: 'note', values: { which: 'objects', kinds: [`1 x "${type}"`] } },
      ]);
    },
  );

  it('follows objects into other parts (production extension)', () => {
    const head =
      'unit="inch" xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06" requiredextensions="p"';
    const outcome = read3mf(
      modelXml(
        object(2, components('<component objectid="7" p:path="/3D/Objects/snail.model"/>')),
        item(2),
        head,
      ),
      { '3D/Objects/snail.model': modelXml(object(7), '') },
    );
    expect(outcome.findings).toEqual([]);
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
    expect(outcome.mesh?.unit).toBe('in');
  });

  it('passes over elements of extensions, whatever they are called', () => {
    const foreign = '<x:vertices xmlns:x="urn:other"><vertex x="a" y="b" z="c"/></x:vertices>';
    const outcome = read3mf(
      modelXml(`${foreign}${object(1, meshXml.replace('<mesh>', `<mesh>${foreign}`))}`, item(1)),
    );
    expect(outcome.findings).toEqual([]);
    expect(facesOf(outcome)).toBe(4);
  });

  it('reads a model whose elements carry a prefix', () => {
    const model = simple.replaceAll(/<(\/?)(?=[a-z])/g, '<$1m:').replace('xmlns=', 'xmlns:m=');
    expect(facesOf(read3mf(model))).toBe(4);
  });

  it('reads UTF-16, as a package may hold it', () => {
    const text = `\ufeff${simple.replace('UTF-8', 'UTF-16')}`;
    expect(
      facesOf(
        read3mf(Uint8Array.from([...text].flatMap((c) => [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8]))),
      ),
    ).toBe(4);
  });

  it('finds parts whatever the case of their names, packed or stored', () => {
    const parts = { '_RELS/.rels': relations('/3d/3DModel.model'), '3D/3dmodel.model': simple };
    const bytes = zipSync(
      Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, new TextEncoder().encode(text)])),
      { level: 0 },
    );
    expect(facesOf(read(bytes, 'leaf.3mf'))).toBe(4);
  });

  it('leaves out points no triangle names', () => {
    const outcome = read3mf(simple.replace('</vertices>', '<vertex x="500" y="0" z="0"/></vertices>'));
    expect(outcome.mesh?.positions).toHaveLength(12);
    expect(codesOf(outcome)).toEqual(['mesh.skipped']);
  });
});
