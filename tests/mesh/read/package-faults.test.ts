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
