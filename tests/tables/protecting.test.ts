import { expect, it } from 'vitest';
import { tableNumbers } from '../../docs/table-numbers.ts';
import { catalogue } from '../../src/findings/index.ts';

const casting = ['alloys.densityKgM3', 'metals.solidKgM3'];
const molten = ['metals.liquidKgM3', 'metals.lighterPerK', 'metals.meltsC'];
const turning = ['half-materials.densityKgM3', 'rubbers.densityKgM3', 'cap-nuts.height', 'nut-bores.depth'];
const lid = ['modulusPa', 'poisson', 'yieldPa', 'yieldToC'].map((what) => `lid-metals.${what}`);
const nuts = ['cap-nuts.acrossFlats', 'cap-nuts.height', 'cap-nuts.hexHeight', 'cap-nuts.domeDiameter'];
const hexes = ['hex-nuts.acrossFlats', 'hex-nuts.height'];
const heat = ['heat.limitC', 'alloys.solidusC'];

/** What of `src/tables` each finding that protects somebody can come to rest on. */
const protecting: Readonly<Record<string, readonly string[]>> = {
  'cover.through': [...nuts, ...hexes],
  'cover.under-process': ['making-processes.leastFeature'],
  'walls.rim-open': [...nuts, ...hexes],
  'channels.leads-out': [],
  'channels.past-rim': [],
  'pins.rim': [],
  'closing.bolts-alone': [],
  'closing.unrated': [],
  'closing.clamps-short': ['reserves.holdingReserve'],
  'closing.press-leaves': [],
  'closing.press-short': ['reserves.holdingReserve'],
  'closing.bolt-unknown': ['bolts.proofN'],
  'closing.bolt-tension': ['bolts.proofN'],
  'closing.bolts-past-proof': ['bolts.proofN', 'tightening.preloadShare'],
  'closing.lid-unknown': lid,
  'closing.lid-stress': lid,
  'closing.wall-unknown': lid,
  'closing.wall-stress': lid,
  'pack.locked': [
    'rubbers.expansionPerK.most',
    'rubbers.expansionPerK.least',
    'rubbers.densityKgM3',
    ...nuts,
  ],
  'balance.machine': [...casting, ...turning],
  'shot.spill': molten,
  'shot.flash': molten,
  'spin.plate-small': [],
  'spin.over-limit': [],
  'spin.unknown': casting,
  'spin.strength-unknown': ['half-materials.strengthPa', 'half-materials.poisson', ...casting],
  'spin.weak': ['half-materials.strengthPa', 'half-materials.poisson', ...casting, ...turning],
  // Heats of the alloy are the plan's own.
  'setting.opened-early': [...casting, ...molten, 'alloys.solidusC', 'alloys.liquidusC'],
  'heat.fixture-soft': heat,
  'heat.former-soft': [...heat, 'rubbers.coolestCureC'],
  'heat.master-soft': heat,
  'heat.unknown': heat,
  'heat.load-untested': ['heat.loadPa'],
  'heat.pour-too-hot': [...heat, 'alloys.liquidusC'],
  'heat.pour-unknown': heat,
  'heat.half-unknown': heat,
  'fit.lid-hole': [],
};

/** What may be from memory: it says what fills or cures, and nobody is hurt where it is off. */
const harmless = [
  'alloys.tensionNM',
  'rubbers.diffusivityM2S',
  'rubbers.conductivityWMK',
  'rubbers.bulkModulusPa',
];

const placeOf = ({ table, what }: { table: string; what: string }): string => `${table}.${what}`;

it('knows of every finding that protects somebody what it rests on', () => {
  const safety = Object.entries(catalogue)
    .filter(([, entry]) => 'safety' in entry && entry.safety)
    .map(([code]) => code);
  expect(Object.keys(protecting).sort()).toEqual(safety.sort());
  const places = new Set(tableNumbers.map(placeOf));
  for (const place of Object.values(protecting).flat()) expect(places, place).toContain(place);
});

it.each(Object.entries(protecting))('%s rests on nothing from memory', (_, places) => {
  const remembered = tableNumbers.filter(
    (one) => one.source.kind === 'memory' && places.includes(placeOf(one)),
  );
  expect(remembered).toEqual([]);
});

it('has from memory only what protects nobody', () => {
  const places = new Set(tableNumbers.filter(({ source }) => source.kind === 'memory').map(placeOf));
  expect([...places].sort()).toEqual([...harmless].sort());
});

// So that it can be looked up again: a number of a standard, a year, a page, an address, or the name of a handbook.
it.each(
  tableNumbers.filter(({ source }) => source.kind === 'published' && !source.text.startsWith('left blank')),
)('$table $row $what names its source', ({ source }) => {
  expect(source.text).toMatch(
    /\b(ISO|EN|DIN|ASTM|ASME|SAE|ITS-90|Shigley|Machinery's Handbook|\d{4}\) \d+|\w+\.(com|org|gov|tools|me))\b/,
  );
});
