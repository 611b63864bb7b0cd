import { expect, test } from 'vitest';
import { checkText } from '../faults/check-text.ts';

const head = `process: rubber
disc: { diameter: 160, thickness: 20 }
masters: { tile: { length: 12, width: 12, above: 2, below: 2 } }
`;

/** What is found of channels, with its line and column. */
async function noChannels(text: string): Promise<unknown[]> {
  const { findings } = await checkText(text, 'plan.yaml');
  return findings
    .filter(({ code }) => code === 'layout.no-channel')
    .map(({ severity, subject, place, at }) => [severity, subject, place, at && `${at.line}:${at.column}`]);
}

test('a gate without a sprue to come from is found, at the placement it was for', async () => {
  const found = await noChannels(
    `${head}placements:\n  - { id: one, master: tile, at: { radius: 40, angle: 0 } }\ngates: straight\n`,
  );
  expect(found).toEqual([['warn', 'one', [40, 0, 0], '5:5']]);
});

test('a vent of a master that stands past the rim is found, at the entry that asks for it', async () => {
  const found = await noChannels(
    `${head}placements:\n  - { id: one, master: tile, at: { radius: 80, angle: 0 } }\nvents:\n  - { placements: [one] }\n`,
  );
  expect(found).toEqual([['warn', 'one', [80, 0, 0], '7:5']]);
});
