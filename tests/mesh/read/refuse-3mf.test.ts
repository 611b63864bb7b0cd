import { describe, expect, test } from 'vitest';
import { coreNamespace, meshXml, modelXml } from '../mesh-files.ts';
import { chain, component, components, doubling, item, object, read3mf, simple } from './models-3mf.ts';

describe('3MF that is refused', () => {
  const secure =
    'xmlns:sc="http://schemas.microsoft.com/3dmanufacturing/securecontent/2019/04" requiredextensions="sc"';
  const beams =
    'xmlns:b="http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02" requiredextensions="b"';
  test.each<[string, string, string, object, object?]>([
    [
      'a point number past the end',
      simple.replace('v3="3"', 'v3="4"'),
      'mesh.bad-index',
      { which: 'object', point: 4, points: 4 },
      { line: 3 },
    ],
    [
      'a negative point number',
      simple.replace('v3="3"', 'v3="-1"'),
      'mesh.unreadable',
      { which: 'model-point', text: '-1' },
      { line: 3 },
    ],
    [
      'triangles before points',
      modelXml(object(1, meshXml.replace(/<mesh>(.*)(<triangles>.*)<\/mesh>/, '<mesh>$2$1</mesh>')), item(1)),
      'mesh.bad-index',
      { which: 'object', points: 0 },
    ],
    [
      'a unit that does not exist',
      modelXml(object(1), item(1), 'unit="ell"'),
      'mesh.unit-unknown',
      { text: 'ell' },
    ],
    [
      'a unit named like a function',
      modelXml(object(1), item(1), 'unit="toString"'),
      'mesh.unit-unknown',
      { text: 'toString' },
    ],
    [
      'a missing object',
      modelXml(object(1), item(2)),
      'mesh.part-missing',
      { which: 'object', object: '2', part: '/3D/3dmodel.model' },
    ],
    [
      'an object made of itself',
      modelXml(object(1, components(component(1))), item(1)),
      'mesh.component-circle',
      { which: 'itself' },
    ],
    [
      'a circle of objects',
      modelXml(object(1, components(component(2))) + object(2, components(component(1))), item(1)),
      'mesh.component-circle',
      { which: 'itself' },
    ],
    [
      'a thousand million triangles out of nothing',
      modelXml(doubling(28), item(29)),
      'mesh.too-many-triangles',
      { what: 'triangles', limit: 4_000_000 },
    ],
    [
      'endless empty objects',
      modelXml(doubling(60, components()), item(61)),
      'mesh.component-circle',
      { which: 'uses', most: 1_000_000 },
    ],
    [
      'objects nested very deep',
      modelXml(chain(2000), item(2001)),
      'mesh.component-circle',
      { which: 'deep', most: 100 },
    ],
    [
      'objects nested very deep, counted from below',
      modelXml(chain(200), Array.from({ length: 200 }, (_, i) => item(i + 1)).join('')),
      'mesh.component-circle',
      { which: 'deep', most: 100 },
    ],
    [
      'two objects of one name',
      modelXml(object(1) + object(1), item(1)),
      'mesh.unreadable',
      { which: 'model-twice', text: '1' },
    ],
    [
      'an object without a name',
      modelXml(`<object>${meshXml}</object>`, item(1)),
      'mesh.unreadable',
      { which: 'model-lacks', text: 'id' },
    ],
    [
      'a point without a height',
      simple.replace(' z="1"', ''),
      'mesh.unreadable',
      { which: 'model-lacks', text: 'z' },
      { line: 3 },
    ],
    [
      'a coordinate that is no number',
      simple.replace('z="1"', 'z="one"'),
      'mesh.unreadable',
      { which: 'model-number', text: 'one' },
    ],
    [
      'a coordinate that is infinite',
      simple.replace('z="1"', 'z="1e999"'),
      'mesh.unreadable',
      { which: 'model-number', text: '1e999' },
    ],
    [
      'a coordinate that is NaN',
      simple.replace('z="1"', 'z="NaN"'),
      'mesh.unreadable',
      { which: 'model-number', text: 'NaN' },
    ],
    [
      'an empty coordinate',
      simple.replace('z="1"', 'z=""'),
      'mesh.unreadable',
      { which: 'model-number', text: '' },
    ],
    ['a decimal comma', simple.replace('z="1"', 'z="1,5"'), 'mesh.decimal-comma', { text: '1,5' }],
    [
      'a short transform',
      modelXml(object(1), item(1, '1 0 0 0 1 0 0 0 1')),
      'mesh.unreadable',
      { which: 'transform-short' },
    ],
    [
      'a long transform',
      modelXml(object(1), item(1, '1 0 0 0 1 0 0 0 1 0 0 0 0 0 0 1')),
      'mesh.unreadable',
      { which: 'transform-long' },
    ],
    [
      'a flattening transform',
      modelXml(object(1), item(1, '1 0 0 0 1 0 0 0 0 0 0 0')),
      'mesh.unreadable',
      { which: 'transform-flat' },
    ],
    [
      'transforms beyond all numbers',
      modelXml(
        object(1) +
          object(2, components(component(1, '1e100 0 0 0 1e100 0 0 0 1e100 0 0 0'))) +
          object(3, components(component(2, '1e100 0 0 0 1e100 0 0 0 1e100 0 0 0'))) +
          object(4, components(component(3, '1e100 0 0 0 1e100 0 0 0 1e100 0 0 0'))),
        item(4, '1e100 0 0 0 1e100 0 0 0 1e100 0 0 0'),
      ),
      'mesh.not-finite',
      { which: 'transforms' },
    ],
    ['nothing to build', modelXml(object(1), ''), 'mesh.no-faces', { which: 'no-items' }],
    [
      'nothing but supports',
      modelXml(object(1, meshXml, 'type="support"'), item(1)),
      'mesh.no-faces',
      { which: 'empty-items' },
    ],
    ['an object without a mesh', modelXml(object(1, ''), item(1)), 'mesh.no-faces', { which: 'empty-items' }],
    ['encrypted content', modelXml(object(1), item(1), secure), 'mesh.encrypted', { which: 'content' }],
    [
      'an extension it needs',
      modelXml(object(1), item(1), beams),
      'mesh.extension-needed',
      { extension: 'http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02' },
    ],
    [
      'an extension it does not declare',
      modelXml(object(1), item(1), 'requiredextensions="q"'),
      'mesh.extension-needed',
      { extension: 'q' },
    ],
    [
      'a document type',
      simple.replace('<model', '<!DOCTYPE model SYSTEM "file:///etc/hostname"><model'),
      'mesh.not-allowed',
      { which: 'doctype' },
      { line: 2 },
    ],
    [
      'entities that grow',
      simple.replace('<model', '<!DOCTYPE m [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><model'),
      'mesh.not-allowed',
      { which: 'doctype' },
    ],
    [
      'an entity',
      simple.replace('z="1"', 'z="&one;"'),
      'mesh.not-allowed',
      { which: 'entity', fault: expect.stringContaining('undefined entity') },
    ],
    [
      'XML cut off',
      simple.slice(0, -30),
      'mesh.unreadable',
      { which: 'xml', fault: expect.stringContaining('unclosed tag') },
    ],
    [
      'another root',
      simple.replaceAll('model', 'muddle').replaceAll('3dmuddle', '3dmodel'),
      'mesh.unreadable',
      { which: 'model-root', text: 'muddle' },
    ],
    [
      'a root of another namespace',
      simple.replace(coreNamespace, 'urn:other'),
      'mesh.unreadable',
      { which: 'model-root', text: 'model' },
    ],
    ['an empty model part', '', 'mesh.unreadable', { which: 'xml' }],
    [
      'a part in another that is not there',
      modelXml(
        object(2, components('<component objectid="7" p:path="/3D/none.model"/>')),
        item(2),
        'xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06"',
      ),
      'mesh.part-missing',
      { which: 'part', part: '/3D/none.model' },
    ],
    [
      'elements nested very deep',
      modelXml('<metadata>'.repeat(3000), ''),
      'mesh.unreadable',
      { which: 'xml-deep' },
    ],
  ])('%s', (_, model, code, values, at) => {
    const outcome = read3mf(model);
    expect(outcome.mesh).toBeUndefined();
    expect(outcome.findings.at(-1)).toMatchObject({ code, severity: 'stop', subject: 'leaf.3mf', values });
    if (at) expect(outcome.findings.at(-1)?.at).toMatchObject({ file: 'leaf.3mf', ...at });
  });
});
