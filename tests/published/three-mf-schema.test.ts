import { expect, test } from 'vitest';
import { modelText } from '../../src/export/three-mf/model.ts';
import { box, torus } from '../export/shapes.ts';
import { schemaFaults } from './three-mf/validate-model.ts';

// Held to the grammar of the 3MF Core Specification by libxml2's own validator; see three-mf/model.xsd.

const tiny = box([1e-7, 2.5e7, 0.1], [-3e-20, 0, 0]);
const items = [
  { id: 'ring', title: 'Ring "A" & <B>', role: 'plug', mesh: torus(20, 5.1, 16, 8), at: [30.5, 30, 5.1] },
  { id: 'speck', title: 'Käfer\u0007 №2', role: 'left by the cutter', mesh: tiny, at: [0, -0.01, 1e-9] },
] as const;
const textOf = (model: Iterable<Uint8Array>): string => {
  const decoder = new TextDecoder();
  return [...model].map((piece) => decoder.decode(piece, { stream: true })).join('');
};
const text = textOf(modelText('Hedgerow “charms”', items));

test('a model of two objects is valid by the schema', () => {
  expect(schemaFaults(text)).toEqual([]);
});

test('a model of nothing at all is valid too', () => {
  expect(schemaFaults(textOf(modelText('', [])))).toEqual([]);
});

const spoiled: readonly (readonly [what: string, from: string | RegExp, to: string])[] = [
  ['a unit it does not know', 'unit="millimeter"', 'unit="mm"'],
  ['another namespace', 'core/2015/02', 'core/2013/01'],
  ['an element out of place', /(<resources>.*<\/resources>)\n(<build>.*<\/build>)/s, '$2$1'],
  ['an element of no kind', '<vertices>', '<corner/><vertices>'],
  ['an attribute of no kind', '<vertex x=', '<vertex w="1" x='],
  ['a coordinate left out', / y="[^"]*"/, ''],
  ['a coordinate without digits after its point', / x="[^"]*"/, ' x="1."'],
  ['a coordinate that is no number', / x="[^"]*"/, ' x="NaN"'],
  ['a corner before the first', / v2="[^"]*"/, ' v2="-1"'],
  ['a corner between two', / v2="[^"]*"/, ' v2="1.5"'],
  ['an object of number 0', '<object id="2"', '<object id="0"'],
  ['an object without a mesh', /<mesh>.*?<\/mesh>/s, ''],
  ['a mesh without faces', /<triangles>.*?<\/triangles>/s, '<triangles></triangles>'],
  ['a transform of eleven numbers', 'transform="1 0 ', 'transform="1 '],
  ['a color without its sign', 'displaycolor="#', 'displaycolor="'],
  ['an end tag left out', '</model>', ''],
];

test.each(spoiled)('the schema refuses %s', (_, from, to) => {
  const broken = text.replace(from, to);
  expect(broken).not.toBe(text);
  expect(schemaFaults(broken)).not.toEqual([]);
});
