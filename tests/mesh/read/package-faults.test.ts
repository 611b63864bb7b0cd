import { expect, test } from 'vitest';
import { codesOf, facesOf, meshXml, modelXml, package3mf, read, relations } from '../mesh-files.ts';
import { item, object, simple } from './models-3mf.ts';

const link = (type: string, target: string, more = ''): string =>
  `<Relationship Target="${target}" Id="s${target.length}" Type="${type}" ${more}/>`;
const linked = (...links: string[]): Uint8Array =>
  package3mf(simple, { '_rels/.rels': relations().replace('</Relationships>', `${links.join('')}$&`) });
const thumbnail = 'http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail';
const ticket = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/printticket';
const headed = (inner: string): Uint8Array =>
  package3mf(simple.replace('<resources>', `${inner}<resources>`));

const colors = (id: number): string =>
  `<basematerials id="${id}"><base name="leaf" displaycolor="#00FF00"/></basematerials>`;

test.each<[string, Uint8Array, object]>([
  [
    'a link outside',
    linked(link('urn:other', 'http://leaf.example/a', 'TargetMode="External"')),
    { which: 'outside' },
  ],
  ['a thumbnail that is missing', linked(link(thumbnail, '/a.png')), { which: 'thumbnail', text: '/a.png' }],
  ['two print tickets', linked(link(ticket, '/a.xml'), link(ticket, '/bb.xml')), { which: 'print-tickets' }],
  ['metadata without a name', headed('<metadata>a</metadata>'), { which: 'metadata-unnamed' }],
  [
    'metadata twice',
    headed('<metadata name="Title">a</metadata>'.repeat(2)),
    { which: 'metadata-twice', text: 'Title' },
  ],
  [
    'white space in a name',
    headed('<metadata name="Leaf Title">a</metadata>'),
    { which: 'metadata-spaced', text: 'Leaf Title' },
  ],
  [
    'an undefined namespace prefix',
    headed('<metadata name="leaf:vein">a</metadata>'),
    { which: 'metadata-prefix', text: 'leaf:vein' },
  ],
  [
    'a property group that an object names and that is missing',
    package3mf(modelXml(object(1, meshXml, 'pid="7" pindex="0"'), item(1))),
    { which: 'group-missing', text: '7' },
  ],
  [
    'a property group that a triangle names and that is missing',
    package3mf(modelXml(object(1, meshXml.replace('v3="1"', 'v3="1" pid="8" p1="0"')), item(1))),
    { which: 'group-missing', text: '8' },
  ],
  [
    'a property group that is doubled',
    package3mf(modelXml(colors(5) + colors(5) + object(1, meshXml, 'pid="5" pindex="0"'), item(1))),
    { which: 'group-twice', text: '5' },
  ],
  [
    'a property group with the id of an object',
    package3mf(modelXml(object(1) + colors(1), item(1))),
    { which: 'group-twice', text: '1' },
  ],
  [
    'an unknown type',
    package3mf(modelXml(object(1) + object(2, meshXml, 'type="leaf"'), item(1))),
    { which: 'object-type', text: 'leaf' },
  ],
  [
    'an item of type other',
    package3mf(modelXml(object(1) + object(2, meshXml, 'type="other"'), item(1) + item(2))),
    { which: 'item-other', text: '2' },
  ],
])('%s is read and said', (_, bytes, values) => {
  const outcome = read(bytes, 'leaf.3mf');
  expect(facesOf(outcome)).toBe(4);
  expect(outcome.findings.filter(({ code }) => code === 'mesh.package-fault')).toMatchObject([
    { severity: 'warn', values },
  ]);
});

test('a thumbnail that is there and one print ticket are no faults', () => {
  const rels = relations().replace(
    '</Relationships>',
    `${link(thumbnail, '/a.png')}${link(ticket, '/bb.xml')}$&`,
  );
  expect(codesOf(read(package3mf(simple, { '_rels/.rels': rels, 'a.png': 'x' }), 'leaf.3mf'))).toEqual([]);
});

test('property groups of an extension, declared prefixes and spaces round a name are no faults', () => {
  const group = '<m:colorgroup id="4"><m:color color="#00FF00"/></m:colorgroup>';
  const head =
    'unit="millimeter" xmlns:m="http://schemas.microsoft.com/3dmanufacturing/material/2015/02" xmlns:leaf="urn:leaf"';
  const model = modelXml(group + object(1, meshXml, 'pid="4" pindex="0"'), item(1), head).replace(
    '<resources>',
    '<metadata name=" leaf:vein ">a</metadata><metadata name="Title">a</metadata>$&',
  );
  expect(codesOf(read(package3mf(model), 'leaf.3mf'))).toEqual([]);
});

test('of a thousand faults of a kind five are said', () => {
  const thousand = Array.from({ length: 1000 }, (_, i) => `<metadata name="a b${i}">a</metadata>`).join('');
  expect(codesOf(read(headed(thousand), 'leaf.3mf'))).toEqual(Array(5).fill('mesh.package-fault'));
});
