import { mmPerInch } from '../geometry/index.ts';
import { ourChoice, published, type RowSource } from './source.ts';

/**
 * Nominal diameter of a thread as people write it (`M10`, `M10x1.5`, `3/8`, `3/8-16 UNC`, `1 1/8 in`), mm: it is the
 * number in the name (ISO 261, ASME B1.1). Undefined where there is none.
 */
export function threadDiameter(written: string): number | undefined {
  const metric = /^\s*M\s*(\d{1,3}(?:\.\d+)?)(?![\d.])/i.exec(written);
  if (metric) return positive(Number(metric[1]));
  const inch = /^\s*(?:(\d{1,2})[\s-]+)?(\d{1,2})\/(\d{1,2})(?!\d)/.exec(written);
  if (!inch) return undefined;
  const [, whole = '0', over, under] = inch;
  return positive((Number(whole) + Number(over) / Number(under)) * mmPerInch);
}

const positive = (value: number): number | undefined =>
  value > 0 && Number.isFinite(value) ? value : undefined;

/** A thread a screw can be driven into: nominal diameter and pitch, mm. */
export interface Thread {
  readonly name: string;
  readonly diameter: number;
  readonly pitch: number;
  readonly source: RowSource;
}

const iso = published('nominal diameters and pitches of ISO 261');
const unified = published('nominal diameters and threads an inch of ASME B1.1, UNC and UNF');

/** Size, coarse pitch, fine pitches, mm. */
const isoRows: readonly (readonly [number, ...number[]])[] = [
  [3, 0.5],
  [4, 0.7],
  [5, 0.8],
  [6, 1],
  [8, 1.25, 1],
  [10, 1.5, 1.25, 1],
  [12, 1.75, 1.5, 1.25],
  [16, 2, 1.5],
];

/** Size, diameter in inches, threads an inch: coarse, fine. */
const inchRows: readonly (readonly [string, number, number, number])[] = [
  ['1/4', 1 / 4, 20, 28],
  ['5/16', 5 / 16, 18, 24],
  ['3/8', 3 / 8, 16, 24],
  ['1/2', 1 / 2, 13, 20],
];

export const threads: readonly Thread[] = [
  ...isoRows.flatMap(([size, ...pitches]) =>
    pitches.map((pitch, i) => ({
      name: i === 0 ? `M${size}` : `M${size}x${pitch}`,
      diameter: size,
      pitch,
      source: iso,
    })),
  ),
  ...inchRows.flatMap(([size, diameter, ...perInch]) =>
    perInch.map((count) => ({
      name: `${size}-${count}`,
      diameter: diameter * mmPerInch,
      pitch: mmPerInch / count,
      source: unified,
    })),
  ),
];

/**
 * The thread people mean by `M6`, `M8x1`, `1/4-20 UNC`, `3/8`; without a pitch the coarse one. Undefined where the
 * table has none.
 */
export function thread(written: string): Thread | undefined {
  const plain = written
    .trim()
    .toLowerCase()
    .replace(/\s*(unc|unf|in|")$/, '')
    .replace(/\s*[x\u00d7]\s*/, 'x')
    .replace(/^m\s+/, 'm');
  const named = ({ name }: Thread): string => name.toLowerCase();
  const coarse = threads.find((row) => plain === `${named(row)}x${row.pitch}`);
  return (
    coarse ??
    threads.find((row) => named(row) === plain) ??
    threads.find((row) => named(row).startsWith(`${plain}-`))
  );
}

/** Drill for a tapped hole: nominal diameter less pitch, the usual rule (ISO 2306 rounds it to the nearest drill). */
export const tapDrill = ({ diameter, pitch }: Thread): number => diameter - pitch;

/** A pocket for a brass insert that is set with heat, mm. */
export interface InsertPocket {
  readonly size: string;
  readonly diameter: number;
  readonly depth: number;
  readonly source: RowSource;
}

const inserts = ourChoice("usual pockets of heat-set brass inserts; go by the maker's sheet of yours");

export const insertPockets: readonly InsertPocket[] = (
  [
    ['M3', 4, 5.7],
    ['M4', 5.6, 8.1],
    ['M5', 6.4, 9.5],
    ['M6', 8, 12.7],
    ['M8', 9.7, 12.7],
    ['1/4-20', 8, 12.7],
  ] as const
).map(([size, diameter, depth]) => ({ size, diameter, depth, source: inserts }));
