import { mmPerInch } from '../geometry/index.ts';
import { published, type RowSource } from './source.ts';

/** The threaded bore of a cap nut: how wide it is at half the thread's height, and how deep, mm. */
export interface NutBore {
  readonly size: string;
  readonly diameter: number;
  readonly depth: number;
  readonly source: RowSource;
}

const din = published(
  "pitch diameter d - 0.6495 P of ISO 724, depth t of DIN 1587:2000 (middle of its range), read off suppliers' tables",
);
const sae = published(
  "pitch diameter d - 0.6495 / n of ASME B1.1, drilled depth of SAE J483a low crown, Machinery's Handbook 31 p. 1681; column told by the letter of its drawing",
);
const pitchDepth = 0.6495;

/** Size, thread, pitch, least and greatest depth, mm. */
const dinRows = [
  ['M4', 4, 0.7, 5.26, 5.74],
  ['M5', 5, 0.8, 7.21, 7.79],
  ['M6', 6, 1, 7.71, 8.29],
  ['M8', 8, 1.25, 10.65, 11.35],
  ['M10', 10, 1.5, 12.65, 13.35],
  ['M12', 12, 1.75, 15.7, 16.4],
  ['M16', 16, 2, 20.6, 21.4],
] as const;

/** Size, thread in inches, threads an inch, depth in inches. */
const saeRows = [
  ['1/4', 0.25, 20, 0.34],
  ['5/16', 0.3125, 18, 0.41],
  ['3/8', 0.375, 16, 0.45],
] as const;

export const nutBores: readonly NutBore[] = [
  ...dinRows.map(([size, thread, pitch, least, most]) => ({
    size,
    diameter: thread - pitchDepth * pitch,
    depth: (least + most) / 2,
    source: din,
  })),
  ...saeRows.map(([size, thread, perInch, depth]) => ({
    size,
    diameter: (thread - pitchDepth / perInch) * mmPerInch,
    depth: depth * mmPerInch,
    source: sae,
  })),
];

/** The bore of a nut of a size as the table of cap nuts names it; undefined where the table has none. */
export const nutBore = (size: string): NutBore | undefined => nutBores.find((row) => row.size === size);
