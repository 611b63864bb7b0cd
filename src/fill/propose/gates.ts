import type { Point2 } from '../../geometry/index.ts';
import { type ChannelEntry, channelDefaults } from '../../plan/index.ts';
import { sweptIn } from '../of-mold.ts';
import { leastPocket } from '../pockets.ts';
import type { Listed } from './lists.ts';
import { openingsFor } from './openings.ts';
import {
  airIn,
  airWith,
  channelsWith,
  entryAt,
  fitted,
  lengthOf,
  mouthOf,
  type Side,
  sideOf,
  stubAt,
  type Trial,
  type Way,
} from './trial.ts';
import { type Specs, type Vented, ventsFor } from './vents.ts';

/** Places round the outline where a gate is tried, besides the usual inner end and where air stays. */
const roundAbout = 12;
/** Ways are looked for to so many of them, those that leave the least air; and of so many found vents are sought for. */
const [mostSought, mostVented] = [4, 3];
/** A gate longer than the shortest by this is not taken, for metal freezes in it. Our own choice. */
const mostLonger = 2;
/** Nearer than this two entries are one, mm. */
const apartAtLeast = 1.2;
/** So many vents count as few: nothing better is looked for than the usual end that does with them. */
const few = 2;
/** Steps of widths, and of volumes that are told apart; mm, mm3. Our own choice. */
const [widthStep, volumeStep] = [0.1, 0.5];

export interface ProposedGate {
  readonly way: Way;
  readonly side: Side;
  /** Its width before, and the width at which it would stay open to air, where that is more; mm. */
  readonly opened?: { readonly from: number; readonly wanted: number };
  /** Air (mm3) that its wider mouth lets out beside it. */
  readonly reaches?: number;
}

export interface Gated extends Vented {
  readonly gate?: ProposedGate;
}

const steps = (volume: number): number => Math.round(volume / volumeStep);

/** The best way in and out of a cavity: by the air that stays, the vents it takes, the length of the gate. */
export function bestGate(trial: Trial, specs: Specs): Gated | undefined {
  const usual = fitted(trial, 'gate', specs.gate, { end: 'inner' }, []);
  const first = usual && gatedBy(trial, usual, specs);
  if (first?.some(({ air, ways }) => steps(air) === 0 && ways.length <= few)) return best(first);
  const others = otherEntries(trial, specs.gate, usual)
    .map((entry) => fitted(trial, 'gate', specs.gate, entry, []))
    .filter((way) => way !== undefined)
    .slice(0, mostVented - (usual ? 1 : 0));
  const shortest = Math.min(...[...(usual ? [usual] : []), ...others].map(lengthOf));
  const more = others
    .filter((way) => lengthOf(way) <= mostLonger * shortest)
    .flatMap((way) => gatedBy(trial, way, specs));
  return best([...(first ?? []), ...more]);
}

type Choice = Gated & { readonly length: number };

/** One is better by so much air as is told, else by fewer ways out, else not: the usual end, and the wide gate, come first. */
const isBetter = (one: Choice, than: Choice): boolean =>
  Math.abs(one.air - than.air) >= leastPocket ? one.air < than.air : one.ways.length < than.ways.length;

const best = ([first, ...others]: readonly Choice[]): Gated | undefined =>
  others.reduce((chosen: Choice | undefined, one) => (chosen && isBetter(one, chosen) ? one : chosen), first);

function gatedBy(trial: Trial, way: Way, specs: Specs): Choice[] {
  const wide = opened(trial, way);
  // Where the wide gate takes the room of a vent, the narrow one may leave less air.
  const both = [wide, ...(wide.way === way ? [] : [{ ...wide, way }]), ...wider(trial, way)];
  const choices: Choice[] = [];
  for (const gate of both) {
    const vented = ventsFor(trial, [gate.way], specs);
    choices.push({ gate, ...vented, length: lengthOf(gate.way) });
    if (steps(vented.air) === 0) break;
  }
  return choices;
}

/** Other places for the gate, those whose mouth alone leaves the least air first; those nearer to the axis first among alike. */
function otherEntries(trial: Trial, spec: Listed, usual: Way | undefined): ChannelEntry[] {
  const { kind, anew } = trial;
  const [{ id, x, y, reach }] = kind;
  const found: Point2[] = usual ? [mouthOf(usual)] : [];
  const known = found.length;
  const add = (at: Point2): void => {
    if (found.every(([u, v]) => Math.hypot(u - at[0], v - at[1]) >= apartAtLeast)) found.push(at);
  };
  for (const pocket of (usual && airWith(trial, [usual])) ?? []) {
    const openings = openingsFor(trial, pocket);
    for (const at of 'at' in openings ? openings.at.slice(0, 2) : []) add(at);
  }
  for (let k = 0; k < roundAbout; k++) {
    const angle = Math.atan2(y, x) + Math.PI + (2 * Math.PI * k) / roundAbout;
    const there = anew.onOutline(id, [x + 2 * reach * Math.cos(angle), y + 2 * reach * Math.sin(angle)]);
    if (there) add(there.at);
  }
  return found
    .slice(known)
    .map((at) => {
      const pockets = airWith(trial, [], [stubAt(trial, 'gate', spec, at)]);
      return { at, air: pockets ? airIn(pockets) : Number.POSITIVE_INFINITY };
    })
    .sort((a, b) => steps(a.air) - steps(b.air) || Math.hypot(...a.at) - Math.hypot(...b.at))
    .slice(0, mostSought)
    .filter(({ air }) => air < Number.POSITIVE_INFINITY)
    .map(({ at }) => entryAt(kind[0], at));
}

/** Half as wide again where its mouth alone then reaches air that stays beside it, for which a vent has no room. */
function wider(trial: Trial, way: Way): ProposedGate[] {
  const { width = channelDefaults.gate.width, entry } = way.listed;
  const fit = entry && fitted(trial, 'gate', { ...way.listed, width: 1.5 * width }, entry, []);
  const air = (ways: readonly Way[]): number => airIn(airWith(trial, ways) ?? []);
  if (!fit || air([fit]) > air([way]) - leastPocket) return [];
  return [{ way: fit, side: sideOf(trial.kind[0], mouthOf(fit)), reaches: air([way]) - air([fit]) }];
}

/** As wide as it stays open to air, where more air stays under it than the best vent lets out and there is room. */
function opened(trial: Trial, way: Way): ProposedGate {
  const { kind, mold, room } = trial;
  const side = sideOf(kind[0], mouthOf(way));
  const forecast = room.forecast(sweptIn(mold, kind[0], channelsWith(trial, [way])));
  const worst = Math.max(0, ...(forecast?.places.map(({ volumes }) => volumes[0]) ?? []));
  const shut = forecast?.gates.find(({ band, opening }) => opening < 1 && band[1] > worst);
  if (!shut) return { way, side };
  const { width = channelDefaults.gate.width, depth = channelDefaults.gate.depth, entry } = way.listed;
  // A cell of the forecast more or less moves the mouth a little.
  const wide = Math.ceil((1.02 * shut.opensAt) / widthStep) * widthStep;
  const rounded = (value: number): number => Math.round(value * 10) / 10;
  const spec = { ...way.listed, width: rounded(wide), depth: rounded((depth * wide) / width) };
  const fit = entry && fitted(trial, 'gate', spec, entry, []);
  return { way: fit ?? way, side, opened: { from: width, wanted: rounded(wide) } };
}
