import { alloyNamed, alloys } from './alloys.ts';
import { materialName } from './material-names.ts';
import { ourChoice, published, type RowSource } from './source.ts';

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
  published(
    `deflection temperatures of printing materials, filamentspecs.com/glass-transition-temperature and github.com/hyiger/filament-db/wiki/FDM-Appendices${text}`,
  );
/** No figure: then nobody knows. */
const blank = (why: string): RowSource => ourChoice(`left blank: ${why}`);
const oneFigure = '; one figure, its load not stated';
const pla = published('PLA at 264 psi, ASTM D648; pro3dcomposites.com/materials/pla');

/**
 * Plastics by the figure at 1.8 MPa, the lower end where a range is given. The figure at 0.45 MPa misleads: nylon keeps
 * 150 to 175 C there and not 100 C at 1.8 MPa.
 */
const plastics: readonly (HeatRow & { readonly unstated?: true })[] = [
  { name: 'PLA', words: ['pla'], kind: 'plastic', limitC: 51, source: pla },
  {
    name: 'PETG',
    words: ['petg', 'pet'],
    kind: 'plastic',
    limitC: 76,
    unstated: true,
    source: hdt(oneFigure),
  },
  { name: 'ABS', words: ['abs'], kind: 'plastic', limitC: 76, source: hdt() },
  { name: 'ASA', words: ['asa'], kind: 'plastic', limitC: 90, unstated: true, source: hdt(oneFigure) },
  { name: 'PC', words: ['pc', 'polycarbonate'], kind: 'plastic', limitC: 127, source: hdt() },
  { name: 'PA12', words: ['pa12', 'pa-12', 'nylon-12'], kind: 'plastic', limitC: 95, source: hdt() },
  {
    name: 'PA6',
    words: ['pa6', 'pa-6', 'nylon', 'pa'],
    kind: 'plastic',
    source: blank('of nylon 6 only the deflection temperature at 0.45 MPa was found'),
  },
  { name: 'standard resin', words: ['resin', 'sla', 'dlp'], kind: 'plastic', limitC: 46, source: hdt() },
  {
    name: 'high-temperature resin',
    words: ['high-temperature'],
    kind: 'plastic',
    source: blank('only figures at 0.45 MPa, after cure, are in print'),
  },
  {
    name: 'wax or clay',
    words: ['wax', 'clay', 'plasticine'],
    kind: 'plastic',
    source: blank('softens'),
  },
];

/** A word for many alloys, some of which melt early. */
const whichAlloy = blank('which alloy, and so where it begins to melt, such a word does not say');
const nist = 'calculated phase diagrams, metallurgy.nist.gov/phase/solder';
const eurocode = published('carbon steel keeps its yield strength up to 400 C: EN 1993-1-2:2005, table 3.1');

const metals: readonly HeatRow[] = [
  {
    name: 'aluminum',
    words: ['aluminum', 'aluminium', '6061', '6061-t6'],
    kind: 'metal',
    // Melts from 582 C, but 6061 is aged at 160 to 177 C and softens for good when held hotter.
    limitC: 160,
    held: true,
    source: published(
      '6061-T6, AA typical: solidus 582 C, glemco.com/capabilities/material-expertise/aluminum-6061-t6; aged at 160 to 177 C',
    ),
  },
  {
    name: 'steel',
    words: ['steel', 'iron', 'stainless'],
    kind: 'metal',
    limitC: 400,
    source: eurocode,
  },
  {
    name: 'brass',
    words: ['brass', 'bronze', 'copper'],
    kind: 'metal',
    // Well under the lowest temperature it is softened at.
    limitC: 250,
    source: published(
      'softened at 425 to 600 C, melts from 885 C: C36000, anchorbronze.com/c36000.htm and diversifiedbronze.com; 250 C is our own choice below that',
    ),
  },
  {
    name: 'silver',
    words: ['silver'],
    kind: 'metal',
    limitC: 779,
    source: published(`eutectic of silver and copper at 779 C: ${nist}`),
  },
  { name: 'gold', words: ['gold'], kind: 'metal', source: whichAlloy },
  { name: 'pewter', words: ['pewter', 'b560', 'britannia'], kind: 'metal', source: whichAlloy },
  { name: 'solder', words: ['solder'], kind: 'metal', source: whichAlloy },
  {
    name: 'tin-lead',
    words: ['sn63pb37', 'tin-lead', 'lead-tin', 'leaded'],
    kind: 'metal',
    limitC: 183,
    source: published(`eutectic of tin and lead: ${nist}`),
  },
  { name: 'zinc alloy', words: ['zamak', 'zinc'], kind: 'metal', source: whichAlloy },
  {
    name: 'bismuth-tin',
    words: ['bi58sn42', 'bi-sn', 'sn-bi', 'bismuth-tin', 'tin-bismuth'],
    kind: 'metal',
    limitC: 138,
    source: published(`eutectic of bismuth and tin: ${nist}`),
  },
  {
    name: 'low-melting alloy',
    words: ['bismuth', 'low-melting', 'fusible'],
    kind: 'metal',
    source: whichAlloy,
  },
];

const porous: readonly HeatRow[] = [
  {
    name: 'plaster',
    words: ['plaster', 'gypsum', 'investment', 'stone', 'cuttlebone', 'sand'],
    kind: 'porous',
    source: blank('what it stands is for its maker to say'),
  },
  {
    name: 'wood',
    words: ['wood', 'mdf', 'plywood', 'cork', 'cardboard', 'paper'],
    kind: 'porous',
    source: blank('chars'),
  },
];

export const heatRows: readonly HeatRow[] = [
  ...plastics.map(({ unstated, ...row }) => (unstated ? row : { ...row, loadPa: methodAPa })),
  ...metals,
  ...porous,
];

/** Kept between a limit and what a thing sees, K. Our own choice. */
const marginK: Readonly<Record<HeatRow['kind'], number>> = { plastic: 10, metal: 20, porous: 0 };

/** Highest temperature a row is trusted to stand under pressure, C; undefined where its limit is blank. */
export const standsC = ({ limitC, kind, held }: HeatRow): number | undefined =>
  limitC === undefined ? undefined : limitC - (held ? 0 : marginK[kind]);

/** An alloy of the table stands what its own composition does; blank where its solidus is. */
function byComposition(written: string): HeatRow | undefined {
  const alloy = alloyNamed(written);
  if (!alloy) return undefined;
  const { name, solidusC } = alloy;
  return {
    name,
    words: [],
    kind: 'metal',
    ...(solidusC && { limitC: solidusC.value }),
    source: solidusC?.source ?? blank(`where ${name} begins to melt was not found`),
  };
}

/** What a plan may name and be understood: those with a limit. */
export const heatNames: readonly string[] = [
  ...heatRows.filter(({ limitC }) => limitC !== undefined).map(({ name }) => name),
  ...alloys.filter(({ solidusC }) => solidusC).map(({ name }) => name),
];

/**
 * The row for a material as people write it, or the least heat-proof where several words of it have a row (a blank
 * counts as the least); undefined where none has.
 */
export function heatRow(written: string): HeatRow | undefined {
  const alloy = byComposition(written);
  if (alloy) return alloy;
  const words = new Set(materialName(written).split(/[^\p{L}\p{N}-]+/u));
  for (const part of [...words].flatMap((word) => word.split('-'))) words.add(part);
  const proof = words.has('high-temperature');
  const found = heatRows.filter((row) => row.words.some((word) => words.has(word)));
  // "High-temp resin" names its own row; "resin" in it does not make it a standard one.
  const meant = proof ? found.filter(({ name }) => name !== 'standard resin') : found;
  return [...meant].sort((a, b) => (a.limitC ?? 0) - (b.limitC ?? 0))[0];
}
