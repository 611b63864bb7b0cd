import { toRadians } from '../../geometry/index.ts';
import { type Channel, runLength } from '../../mold/index.ts';
import { type ChannelEntry, channelDefaults } from '../../plan/index.ts';
import { sweptIn } from '../of-mold.ts';
import type { Listed } from './lists.ts';
import { airWith, fitted, type Side, sideOf, type Trial } from './trial.ts';
import { airIn, type ProposedVent, ventsFor } from './vents.ts';

/** Entries in the order in which one is preferred that fills as well: the inner end is usual. */
const entries: readonly ChannelEntry[] = [
  ...(['inner', 'outer', 'left', 'right'] as const).map((end) => ({ end })),
  ...[45, 135, -45, -135].map((degrees) => ({ angleRad: toRadians(degrees) })),
];
/** A gate longer than the shortest by this is not taken, for metal freezes in it. Our own choice. */
const mostLonger = 2;
/** Nearer than this two entries are one, mm. */
const apartAtLeast = 2;
/** Of so many entries vents are sought for. */
const mostVented = 2;
/** Steps of widths, and of volumes that are told apart; mm, mm3. Our own choice. */
const [widthStep, volumeStep] = [0.1, 0.5];

export interface ProposedGate {
  readonly listed: Listed;
  readonly side: Side;
  /** Its width before, and the width at which it would stay open to air, where that is more; mm. */
  readonly opened?: { readonly from: number; readonly wanted: number };
}

export interface Gated {
  readonly gate?: ProposedGate;
  readonly vents: readonly ProposedVent[];
}

interface Candidate {
  readonly entry: ChannelEntry;
  readonly listed: Listed;
  readonly channels: readonly Channel[];
  readonly length: number;
  readonly air: number;
}

/** The best way in and out of a cavity: by the air that stays, the vents it takes, the length of the gate. */
export function bestGate(
  trial: Trial,
  spec: { readonly gate: Listed; readonly vent: Listed },
): Gated | undefined {
  const found = candidates(trial, spec.gate);
  const shortest = Math.min(...found.map(({ length }) => length));
  const [usual] = found;
  const short = found.filter(({ length }) => length <= mostLonger * shortest);
  const byAir = [...short].sort((a, b) => steps(a.air) - steps(b.air));
  // The usual end is always looked at; it needs nothing better where it leaves no air.
  const first = short.includes(usual) ? [usual] : [];
  const looked = [...new Set([...first, ...byAir])].slice(0, mostVented);
  const gated = looked.flatMap((one) => {
    const wide = opened(trial, one);
    // Where the wide gate takes the room of a vent, the narrow one may leave less air.
    const both = wide.listed === one.listed ? [wide] : [wide, { ...wide, listed: one.listed }];
    return both.map((gate) => ({ gate, length: one.length, ...ventsFor(trial, [gate.listed], spec.vent) }));
  });
  const [best] = gated.sort(
    (a, b) => steps(a.air) - steps(b.air) || a.vents.length - b.vents.length || a.length - b.length,
  );
  return best && { gate: best.gate, vents: best.vents };
}

const steps = (volume: number): number => Math.round(volume / volumeStep);

function candidates(trial: Trial, spec: Listed): Candidate[] {
  const found: Candidate[] = [];
  for (const entry of entries) {
    const fit = fitted(trial, 'gate', { gates: [], vents: [] }, spec, entry);
    const air = fit && airWith(trial, fit.channels);
    const gate = fit?.channels.find(({ kind }) => kind === 'gate');
    if (!fit || !air || !gate) continue;
    const [x, y] = gate.run[gate.run.length - 1].at;
    const isNew = found.every(({ channels }) => {
      const [u, v] = lastPoint(channels);
      return Math.hypot(x - u, y - v) >= apartAtLeast;
    });
    const { listed, channels } = fit;
    if (isNew) found.push({ entry, listed, channels, length: runLength(gate.run), air: airIn(air) });
    // The usual end needs nothing better where it leaves no air.
    if (found[0]?.air === 0) break;
  }
  return found;
}

function lastPoint(channels: readonly Channel[]): readonly [number, number] {
  const run = channels.find(({ kind }) => kind === 'gate')?.run ?? [];
  const [x, y] = run[run.length - 1]?.at ?? [Number.NaN, Number.NaN];
  return [x, y];
}

/** As wide as it stays open to air, where more air stays under it than the best vent lets out and there is room. */
function opened(trial: Trial, { entry, listed, channels }: Candidate): ProposedGate {
  const { kind, mold, room } = trial;
  const side = sideOf(kind[0], lastPoint(channels));
  const forecast = room.forecast(sweptIn(mold, kind[0], channels));
  const worst = Math.max(0, ...(forecast?.places.map(({ volumes }) => volumes[0]) ?? []));
  const shut = forecast?.gates.find(({ band, opening }) => opening < 1 && band[1] > worst);
  if (!shut) return { listed, side };
  const { width = channelDefaults.gate.width, depth = channelDefaults.gate.depth } = listed;
  // A cell of the forecast more or less moves the mouth a little.
  const wide = Math.ceil((1.02 * shut.opensAt) / widthStep) * widthStep;
  const rounded = (value: number): number => Math.round(value * 10) / 10;
  const spec = { ...listed, width: rounded(wide), depth: rounded((depth * wide) / width) };
  const fit = fitted(trial, 'gate', { gates: [], vents: [] }, spec, entry);
  return { listed: fit?.listed ?? listed, side, opened: { from: width, wanted: rounded(wide) } };
}
