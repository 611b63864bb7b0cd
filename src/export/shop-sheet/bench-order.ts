import type { Mold } from '../../mold/index.ts';
import { showQuantity } from '../../wording/index.ts';

/** The steps at the bench for the plan's process, in order, to be ticked off. Common practice, no published source. */
export function benchOrder(mold: Mold): readonly string[] {
  if (mold.placements.length === 0) return fixtureOrder(mold);
  if (mold.process === 'rubber') return rubberOrder(mold);
  return mold.process === 'poured' ? pouredOrder(mold) : rigidOrder(mold);
}

const when = (wanted: boolean, step: string): string[] => (wanted ? [step] : []);

/** What lies in the can while it is hot, and how it is got. */
function hotFormers({ sprue, tabs, bosses, supports }: Mold): string[] {
  const formers = [
    ...when(sprue !== undefined, 'sprue form'),
    ...when(tabs.length > 0, 'tab'),
    ...when(bosses.length > 0, 'bosses'),
    ...when(supports.length > 0, 'build-ups'),
  ];
  return when(
    formers.length > 0,
    `What goes into the hot can (${formers.join(', ')}) is bought, machined of metal, or cast from a print: print it larger by the shrink, mold it in silicone that cures cold, cast it in a metal that melts well above the cure, dress it to size, try it in the cold can. No print goes in.`,
  );
}

/** A plan without masters makes fixtures for other molds, or is not laid out yet. */
function fixtureOrder(mold: Mold): string[] {
  const { process, fixture, sprue, bosses } = mold;
  return [
    ...(process === 'rubber' ? hotFormers(mold) : []),
    `Make the fixtures of ${fixture.material}; check each against the manifest before it is used.`,
    ...when(
      sprue !== undefined,
      'Try the center sprue form in its halves: it stands upright in the well, and leaves the upper half by its draft.',
    ),
    ...when(
      bosses.length > 0,
      'Try the registration bosses by the boss table: the halves close in one position only.',
    ),
    'Before a mold is made with them: enter its masters and placements in the plan, and print this sheet anew.',
  ];
}

function rubberOrder(mold: Mold): string[] {
  const { bench, supports, tabs, notches, bosses, sprue } = mold;
  const { cure, closing } = bench;
  return [
    'Check this sheet: measure the bars of 100 mm and 4 in on the plan view. Masters counted, clean, dry and free of oil.',
    ...hotFormers(mold),
    'Lay the lower rubber into the can, parting face up. Can, lids and forms clean.',
    ...when(sprue !== undefined, 'Set the center sprue form into its well, upright, in the middle.'),
    'Prick the outlines through the plan view; cut pockets by the sink and volume of each master.',
    ...when(
      bosses.length > 0,
      'Set the registration bosses by the jig or the boss table, hexagon down, index mark to index mark.',
    ),
    'Lay the masters in, turned as on the plan view.',
    ...when(
      supports.length > 0,
      'Lay the build-ups where their numbers say, through the nest or by the plan view; lift the nest off.',
    ),
    'Dust or brush parting agent on the whole parting face (no talc where it can be breathed), paper where the outer faces meet the lids.',
    ...when(tabs.length > 0, 'Lay the separating tab at the rim, wholly inside it.'),
    'Lay the upper rubber on, plug or sprue form through its hole.',
    'Close the can evenly, crosswise, in small steps; draw the bolts, then set the clamps that carry the load.',
    ...when(
      closing?.press?.cure === 'in the press',
      'Leave the can under the closed press until it has cooled; keep hands out while the platens move.',
    ),
    ...when(
      cure?.temperatureC !== undefined && cure.timeS !== undefined,
      `Cure at ${showQuantity(cure?.temperatureC ?? 0, 'C', mold.units)} for ${((cure?.timeS ?? 0) / 60).toFixed(0)} min from the time the ${cure?.heating === 'oven' ? 'oven' : 'platens'} ${cure?.heating === 'oven' ? 'is' : 'are'} hot; extract the fumes.`,
    ),
    ...when(
      closing?.clamps !== undefined,
      'Draw the clamps after as the rubber softens, only if the maker of the can allows it, standing aside.',
    ),
    cure?.cooling === 'out'
      ? 'Open hot, in gloves, after the pressure is off.'
      : 'Let it cool in the closed can; do not open it hot.',
    ...when(notches.length > 0, 'Cut the witness notch across both halves before you part them.'),
    'Part the halves at the tab with a blunt blade; take the masters out.',
    ...when(
      mold.channels.length > 0,
      'Cut gates and runners, then vents, by the plan view: narrow first, wider after the first pour.',
    ),
    'Close the halves empty, turn them against each other by hand: they must close in one position only.',
    'Warm and dry the mold; spin it empty behind the guard before the first metal.',
  ];
}

function rigidOrder(mold: Mold): string[] {
  return [
    'Check the halves against the manifest: diameter, thickness, no stringing or burrs on the parting faces.',
    ...when(
      mold.fixture.bed !== undefined,
      'Join what was split to fit the bed, on a flat plate; measure the diameter before the glue sets.',
    ),
    ...when(
      mold.fixture.cutter !== undefined,
      'Finish with a smaller mill or by hand where the findings say that the cutter leaves something.',
    ),
    ...when(
      mold.bosses.some(({ kind }) => kind === 'cap nut'),
      'Set the cap nuts into their pockets, down to the hexagon.',
    ),
    'Clean sockets and bosses; the halves must close without force and in one position only.',
    ...when(mold.sprue !== undefined, 'Clear the pouring hole and the well.'),
    'Brush on the parting agent that the casting material asks for, thinly.',
    ...when(
      mold.channels.length > 0,
      'Clear gates and vents with a wire; open them a little at a time after the first pour.',
    ),
    'Dry the halves through: damp turns to steam under metal.',
    `Pour nothing hotter than ${mold.fixture.material} stands: see the heat findings of this sheet.`,
    'Spin the closed halves empty, behind the guard, up to the speed of the plan, before the first pour.',
    'Keep it turning until the metal, wax or resin has set; part the halves once they have stopped and cooled.',
  ];
}

function pouredOrder(mold: Mold): string[] {
  return [
    'Wash and cure the plates fully; uncured resin, sulfur and amines stop silicone from curing.',
    'Try a spot of silicone on a corner of the plate overnight first.',
    ...when(
      mold.bosses.some(({ kind }) => kind === 'cap nut'),
      'Set the cap nuts into the plate where the boss table says.',
    ),
    'Seal and wax the plates; stand them level.',
    'Weigh, mix and de-air the silicone or resin by its maker’s sheet, as much as the amounts say; pour from one side, low and slow, to the top of the rim wall.',
    'Let it cure by its sheet, then heat it on as the sheet says before metal touches it.',
    `Lift the halves off by the rim; ${mold.notches.length > 0 ? 'cut the notch; ' : ''}close them empty: one position only.`,
    ...when(mold.channels.length > 0, 'Open gates and vents where the plate left skins.'),
    'Warm and dry the mold; spin it empty behind the guard before the first metal.',
  ];
}

/**
 * Said on the first page, of what the process has. Base: 29 CFR 1910.212, 1910.1025 (lead), HSE on molten metal and
 * rubber fume; see README.
 */
export const cautions = (process: Mold['process']): readonly string[] => [
  'Molten metal and water explode: dry and preheat mold, tools and ingots. Face, hand, arm and foot protection; dry sand at hand.',
  'Spin only behind an interlocked guard, within the limits of the machine’s maker and of the disc. Stand out of the plane of the disc.',
  ...when(
    process === 'rubber',
    'A closed hot can stores force: stand aside, tighten evenly, never open it hot or under pressure.',
  ),
  `Extract fumes from ${process === 'rubber' ? 'curing rubber and from melting' : 'curing and from melting'}. Avoid talc dust. No lead or cadmium where skin or food will touch the casting.`,
  'Local codes, the makers of machine, rubber and alloy, and licensed practice come before anything printed here.',
];
