import { type Finding, finding } from '../../findings/index.ts';
import { type Point2, toDegrees } from '../../geometry/index.ts';
import type { Channel, Station } from '../mold.ts';
import { channelOutline } from '../shapes/index.ts';
import { nearestOnRing, spansIn } from './ring.ts';

/** A gate that turns by less lets metal pass the pocket with its speed, degrees. Common practice, no published source. */
const leastTurn = 45;
/** So near a straight piece a point lies on it, mm. */
const onLine = 1e-6;

/**
 * The blind pocket of a slowing bend: from the gate's last turn before the cavity straight on, as wide and deep as the gate is
 * there. `corners` are the gate's points from the cavity inward before they were rounded, the turn the second of them.
 */
export function slowingPocket(
  gate: Channel,
  [within, turn, before]: readonly Point2[],
  length: number,
  { discRadius, wall }: { readonly discRadius: number; readonly wall: number },
): { readonly pocket: Channel; readonly findings: readonly Finding[] } {
  const [inward, onward] = [wayOf(before, turn), wayOf(turn, within)];
  const begin = lastOnPiece(gate.run, before, turn);
  const end: Point2 = [turn[0] + inward[0] * length, turn[1] + inward[1] * length];
  const own = spansIn([begin.at, end], channelOutline(gate)).find(([from]) => from === 0)?.[1] ?? 0;
  const { id, placement, section, half } = gate;
  const pocket: Channel = {
    id: pocketId(id),
    kind: 'pocket',
    placement,
    run: [begin, { ...begin, at: end }],
    laps: [own, 0],
    section,
    half,
    opensInto: id,
  };
  const about = { subject: pocket.id, place: [...turn, 0] as const };
  const angle = toDegrees(Math.acos(Math.min(1, inward[0] * onward[0] + inward[1] * onward[1])));
  const slight = { measured: angle, limit: leastTurn, placement };
  return {
    pocket,
    findings: [
      ...(angle < leastTurn ? [finding('channels.no-turn', { ...about, values: slight })] : []),
      ...pastRim(pocket, discRadius - wall),
    ],
  };
}

export const pocketId = (gate: string): string => `${gate}-pocket`;

/** What of a channel lies nearer to the rim than a wall, where it has no business. */
export function pastRim({ id, kind, placement, run }: Channel, limit: number): Finding[] {
  const [far] = [...run].sort((a, b) => reachOf(b) - reachOf(a));
  const measured = reachOf(far);
  if (measured <= limit || (kind !== 'runner' && kind !== 'pocket')) return [];
  const values = { measured, limit, kind, placement };
  return [finding('channels.past-rim', { subject: id, place: [...far.at, 0], values })];
}

const reachOf = ({ at, width }: Station): number => Math.hypot(...at) + width / 2;

function wayOf(from: Point2, to: Point2): Point2 {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  return [dx / length, dy / length];
}

/** The last station before a gate leaves the straight piece toward its turn. */
function lastOnPiece(run: Channel['run'], from: Point2, to: Point2): Station {
  const on = run.filter(({ at }) => {
    const [x, y] = nearestOnRing([from, to], at).at;
    return Math.hypot(x - at[0], y - at[1]) < onLine;
  });
  return on[on.length - 1] ?? run[0];
}
