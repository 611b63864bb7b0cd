import { type Channel, cutRun, runLength } from '../../mold/index.ts';

/** What a ring of the stencil is held by. */
const bridges = 3;
const whole = 2 * Math.PI;

/** Where round the axis other channels meet a ring, rad from 0 to a whole turn. */
export const leavingAngles = (ring: string, channels: readonly Channel[]): number[] =>
  channels
    .filter(({ opensInto }) => opensInto === ring)
    .map(({ kind, run }) => (kind === 'runner' ? run[run.length - 1] : run[0]).at)
    .map(([x, y]) => (Math.atan2(y, x) + whole) % whole);

/** A ring's run in pieces, with bridges of a width in the middle of the widest gaps between what meets it: nothing is cut off from the sheet. */
export function ringPieces(run: Channel['run'], taken: readonly number[], width: number): Channel['run'][] {
  const length = runLength(run);
  const begin = Math.atan2(run[0].at[1], run[0].at[0]);
  const at = bridgeAngles(taken)
    .map((angle) => (((angle - begin + whole) % whole) / whole) * length)
    .sort((a, b) => a - b);
  return at.map((from, i) => {
    const [start, end] = [from + width / 2, (at[i + 1] ?? at[0] + length) - width / 2];
    // A piece over the ring's own beginning comes of its end and its beginning.
    if (end <= length) return cutRun(run, start, end);
    return [...cutRun(run, start, length), ...cutRun(run, 0, end - length).slice(1)];
  });
}

function bridgeAngles(taken: readonly number[]): number[] {
  const found: number[] = [];
  for (let k = 0; k < bridges; k++) {
    const points = [...(taken.length > 0 ? taken : [0]), ...found].sort((a, b) => a - b);
    const gaps = points.map((from, i) => ({ from, gap: (points[i + 1] ?? points[0] + whole) - from }));
    const widest = gaps.reduce((best, one) => (one.gap > best.gap + 1e-9 ? one : best));
    found.push((widest.from + widest.gap / 2) % whole);
  }
  return found;
}
