import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { folderName } from '../../cli/folder-name.ts';

test.each([
  ['Hedgerow charms', 'hedgerow-charms'],
  ['9 in, rev. 2', '9-in-rev-2'],
  ['Käfer & Co.', 'käfer-co'],
  ['甲虫', '甲虫'],
  ['../../etc/passwd', 'etc-passwd'],
  ['...', 'mold'],
  [`a${'\u{10400}'.repeat(70)}`, `a${'\u{10428}'.repeat(59)}`],
  [`${'a'.repeat(59)} b`, 'a'.repeat(59)],
  ['', 'mold'],
  // Names of devices on Windows (Microsoft, "Naming files, paths, and namespaces").
  ['CON', 'con-mold'],
  ['lpt1', 'lpt1-mold'],
])('%j becomes %s', (title, name) => {
  expect(folderName(title)).toBe(name);
});

it('is one spelling for composed and decomposed letters', () => {
  expect(folderName('Ka\u0308fer')).toBe(folderName('K\u00e4fer'));
});

it('is a plain name of one folder, whatever the title', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (title) => {
      const name = folderName(title);
      expect(name).toMatch(/^[\p{L}\p{N}-]+$/u);
      expect([...name].length).toBeLessThanOrEqual(65);
      // Most file systems allow 255 bytes.
      expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(255);
    }),
  );
});
