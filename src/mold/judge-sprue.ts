import { type CodeValues, type Finding, finding } from '../findings/index.ts';
import type { Plan } from '../plan/index.ts';
import type { Disc, Sprue } from './mold.ts';
import { shaftRadius, soundSprue, spigotOf } from './shapes/index.ts';

/** Least material round a puller hole, under it, or between flats, mm. Common practice, no published source. */
const leastAround = 2;

/**
 * What the sprue form's puller, flats and vent ask for and cannot have: a thread the tables lack, a hole or flats that
 * leave less than 2 mm, flats no narrower than the grip.
 */
export function judgeSprue({ sprue: spec }: Plan, sprue: Sprue | undefined, disc: Disc): Finding[] {
  if (!spec || !sprue) return [];
  const { upper } = disc;
  const findings: Finding[] = [];
  if (spec.puller && !sprue.puller) {
    const { screw, hole = 'tapped' } = spec.puller;
    const values = { which: hole === 'insert' ? 'insert' : 'thread', screw } as const;
    findings.push(finding('layout.unknown-thread', { subject: 'sprue', values }));
  }
  const thin = (values: CodeValues<'layout.sprue-thin'>): void => {
    // Flats that cut nothing do no harm; where nothing is left there is no grip.
    const severity = values.which !== 'flats' && values.measured <= 0 ? 'stop' : 'warn';
    findings.push(finding('layout.sprue-thin', { subject: 'sprue', values, severity }));
  };
  const top = shaftRadius(sprue, upper);
  if (!soundSprue({ sprue, disc })) return findings;
  const { puller, flats, vent = 0 } = sprue;
  const across = Math.min(flats === undefined ? top : flats / 2, top - vent);
  if (flats !== undefined && (flats >= 2 * top || !(sprue.grip > 0))) {
    thin({ which: 'flats', measured: 2 * top, limit: flats });
  }
  if (puller) {
    const wall = across - puller.diameter / 2;
    if (wall < leastAround)
      thin({ which: 'round', measured: wall, limit: leastAround, hole: puller.diameter });
    const floor =
      sprue.pieces === 'two' ? spigotOf(sprue, upper).height + 0.5 : sprue.domeHeight - sprue.wellDepth;
    const under = upper + sprue.grip - puller.depth - floor;
    if (under < leastAround)
      thin({ which: 'under', measured: under, limit: leastAround, hole: puller.depth });
  } else if (across < leastAround) thin({ which: 'grip', measured: across, limit: leastAround });
  return findings;
}
