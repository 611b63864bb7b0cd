import { type Finding, finding } from '../findings/index.ts';
import type { Plan } from '../plan/index.ts';
import type { Sprue } from './mold.ts';
import { shaftRadius, spigotOf } from './shapes/index.ts';

/** Least material round a puller hole, under it, or between flats, mm. Common practice, no published source. */
export const leastAround = 2;

/**
 * What the sprue form's puller, flats and vent ask for and cannot have: a thread the tables lack, a hole or flats that
 * leave less than 2 mm, flats no narrower than the grip.
 */
export function judgeSprue({ sprue: spec }: Plan, sprue: Sprue | undefined, upper: number): Finding[] {
  if (!spec || !sprue) return [];
  const findings: Finding[] = [];
  if (spec.puller && !sprue.puller) {
    const { screw, hole = 'tapped' } = spec.puller;
    const says =
      hole === 'insert'
        ? `The tables have no pocket of a heat-set insert for ${screw}.`
        : `The tables have no thread ${screw}.`;
    findings.push(finding('layout.unknown-thread', { subject: 'sprue', says, at: spec.at }));
  }
  const thin = (value: number, limit: number, says: string): void => {
    findings.push(
      finding('layout.sprue-thin', {
        subject: 'sprue',
        measured: { value, unit: 'mm' },
        limit: { value: limit, unit: 'mm' },
        says,
        at: spec.at,
      }),
    );
  };
  const top = shaftRadius(sprue, upper);
  // There is no grip then; `fit.sprue-closed` says so.
  if (top <= 0) return findings;
  const { puller, flats, vent = 0 } = sprue;
  const across = Math.min(flats === undefined ? top : flats / 2, top - vent);
  if (flats !== undefined && (flats >= 2 * top || !(sprue.grip > 0))) {
    thin(
      2 * top,
      flats,
      `The grip is ${(2 * top).toFixed(1)} mm across, so flats of ${flats.toFixed(1)} mm cut nothing.`,
    );
  }
  if (puller) {
    const wall = across - puller.diameter / 2;
    const says = `The puller hole of ${puller.diameter.toFixed(2)} mm leaves ${wall.toFixed(1)} mm of the grip round it.`;
    if (wall < leastAround) thin(wall, leastAround, says);
    const floor =
      sprue.pieces === 'two' ? spigotOf(sprue, upper).height + 0.5 : sprue.domeHeight - sprue.wellDepth;
    const under = upper + sprue.grip - puller.depth - floor;
    if (under < leastAround) {
      thin(
        under,
        leastAround,
        `The puller hole of ${puller.depth.toFixed(1)} mm leaves ${under.toFixed(1)} mm under it.`,
      );
    }
  } else if (across < leastAround)
    thin(across, leastAround, `Flats and vent leave ${across.toFixed(1)} mm of the grip.`);
  return findings;
}
