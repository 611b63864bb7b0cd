import { materialName } from './material-names.ts';
import { fromMemory, published, type RowSource } from './source.ts';

/** What a fixture, a master or a rigid half is made of, and what heat it stands. */
export interface HeatRow {
  readonly name: string;
  /** Whole words by which a plan names it, in lower case. */
  readonly words: readonly string[];
  readonly kind: 'plastic' | 'metal' | 'porous';
  /**
   * Plastics: deflection temperature at 1.8 MPa; metals: where they begin to melt or, if that is lower, to soften for
   * good; C. Blank (undefined) where no figure is at hand or the figures in print cannot be trusted: then nobody knows.
   */
  readonly limitC?: number;
  /** Plastics: load the limit was measured under, Pa. */
  readonly loadPa?: number;
  /** Whether the limit is one it may be held at, such as the aging temperature of an alloy: no margin then. */
  readonly held?: true;
  readonly source: RowSource;
}

/** Load of ISO 75-2, method A, Pa: a limit measured under less says nothing of a part under pressure. */
export const methodAPa = 1.8e6;

const hdt = (text = '') =>
  published(`tables of glass transition and deflection temperatures of printing materials${text}`);
const oneFigure = '; one figure, its load not stated';

/**
 * Plastics by the figure at 1.8 MPa, the lower end where a range is given. The figure at 0.45 MPa misleads: nylon keeps
 * 150 to 175 C there and not 100 C at 1.8 MPa.
 */
const plastics: readonly HeatRow[] = [
  { name: 'PLA', words: ['pla'], kind: 'plastic', limitC: 58.8, source: hdt(oneFigure) },
  { name: 'PETG', words: ['petg', 'pet'], kind: 'plastic', limitC: 76, source: hdt(oneFigure) },
  { name: 'ABS', words: ['abs'], kind: 'plastic', limitC: 76, source: hdt() },
  { name: 'ASA', words: ['asa'], kind: 'plastic', limitC: 90, source: hdt(oneFigure) },
  { name: 'PC', words: ['pc', 'polycarbonate'], kind: 'plastic', limitC: 127, source: hdt() },
  { name: 'PA12', words: ['pa12', 'pa-12', 'nylon-12'], kind: 'plastic', limitC: 95, source: hdt() },
  {
    name: 'PA6',
    words: ['pa6', 'pa-6', 'nylon', 'pa'],
    kind: 'plastic',
    limitC: 60,
    source: fromMemory('deflection temperature of dry nylon 6'),
  },
  { name: 'standard resin', words: ['resin', 'sla', 'dlp'], kind: 'plastic', limitC: 46, source: hdt() },
  {
    name: 'high-temperature resin',
    words: ['high-temperature'],
    kind: 'plastic',
    source: fromMemory('only figures at 0.45 MPa, after cure, are in print: left blank'),
  },
  {
    name: 'wax or clay',
    words: ['wax', 'clay', 'plasticine'],
    kind: 'plastic',
    source: fromMemory('softens; no figure'),
  },
];

const binary = 'melting points of the metals';

const metals: readonly HeatRow[] = [
  {
    name: 'aluminum',
    words: ['aluminum', 'aluminium', '6061', '6061-t6'],
    kind: 'metal',
    // Melts from 582 C, but 6061 is aged at 160 to 177 C and softens for good when held hotter.
    limitC: 160,
    held: true,
    source: published('6061-T6 as maker sheets give it: aged at 160 to 177 C, solidus 582 C'),
  },
  {
    name: 'steel',
    words: ['steel', 'iron', 'stainless'],
    kind: 'metal',
    limitC: 400,
    source: fromMemory('stays hard'),
  },
  {
    name: 'brass',
    words: ['brass', 'bronze', 'copper'],
    kind: 'metal',
    limitC: 250,
    source: fromMemory('stays hard'),
  },
  { name: 'silver', words: ['silver', 'gold'], kind: 'metal', limitC: 700, source: fromMemory(binary) },
  {
    name: 'pewter',
    words: ['pewter', 'b560', 'britannia'],
    kind: 'metal',
    limitC: 240,
    source: published('pewter 91Sn-7Sb-2Cu, solidus, materials database (rounded)'),
  },
  {
    name: 'tin-lead',
    words: ['sn63pb37', 'solder', 'tin-lead', 'lead-tin'],
    kind: 'metal',
    limitC: 183,
    source: published('eutectic of Sn63Pb37, table of solder alloys'),
  },
  {
    name: 'zinc alloy',
    words: ['zamak', 'zinc'],
    kind: 'metal',
    limitC: 381,
    source: published("solidus of Zamak 3, die caster's sheet"),
  },
  {
    name: 'bismuth-tin',
    words: ['bi58sn42', 'bi-sn', 'sn-bi', 'bismuth', 'bismuth-tin', 'tin-bismuth', 'low-melting'],
    kind: 'metal',
    limitC: 138,
    source: published('eutectic of Bi58Sn42'),
  },
];

const porous: readonly HeatRow[] = [
  {
    name: 'plaster',
    words: ['plaster', 'gypsum', 'investment', 'stone', 'cuttlebone', 'sand'],
    kind: 'porous',
    limitC: 700,
    source: fromMemory('baked plaster; only once every trace of water is out'),
  },
  {
    name: 'wood',
    words: ['wood', 'mdf', 'plywood', 'cork', 'cardboard', 'paper'],
    kind: 'porous',
    source: fromMemory('chars; no figure'),
  },
];

export const heatRows: readonly HeatRow[] = [
  ...plastics.map((row) => ({ ...row, loadPa: methodAPa })),
  ...metals,
  ...porous,
];

/** Kept between a limit and what a thing sees, K. Our own choice. */
const marginK: Readonly<Record<HeatRow['kind'], number>> = { plastic: 10, metal: 20, porous: 0 };

/** Highest temperature a row is trusted to stand under pressure, C; undefined where its limit is blank. */
export const standsC = ({ limitC, kind, held }: HeatRow): number | undefined =>
  limitC === undefined ? undefined : limitC - (held ? 0 : marginK[kind]);

/**
 * The row for a material as people write it, or the least heat-proof where several words of it have a row (a blank
 * counts as the least); undefined where none has.
 */
export function heatRow(written: string): HeatRow | undefined {
  const words = new Set(materialName(written).split(/[^\p{L}\p{N}-]+/u));
  for (const part of [...words].flatMap((word) => word.split('-'))) words.add(part);
  const proof = words.has('high-temperature');
  const found = heatRows.filter((row) => row.words.some((word) => words.has(word)));
  // "High-temp resin" names its own row; "resin" in it does not make it a standard one.
  const meant = proof ? found.filter(({ name }) => name !== 'standard resin') : found;
  return [...meant].sort((a, b) => (a.limitC ?? 0) - (b.limitC ?? 0))[0];
}

/** Highest metal temperature the halves stand, by the kind of rubber; C. */
const halves: readonly { readonly words: RegExp; readonly limitC: number; readonly source: RowSource }[] = [
  {
    words: /silicone/i,
    limitC: 430,
    source: fromMemory("silicone, from makers' sheets"),
  },
  {
    words: /natural|organic|gum|nitrile|\bNBR\b|\bSBR\b|\bNR\b/i,
    limitC: 290,
    source: fromMemory("organic rubber, from makers' sheets"),
  },
];

/** The row for a compound as people write it; undefined where its kind cannot be told. */
export const rubberHeat = (compound: string) => halves.find(({ words }) => words.test(compound));
