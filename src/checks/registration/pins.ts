import { type Finding, finding } from '../../findings/index.ts';
import { type Boss, cornerShare, type Mold, sidewaysGap } from '../../mold/index.ts';
import type { Pin } from '../../physics/index.ts';

export const source =
  'largest |t + theta k x p| with |t + theta k x p_i| <= c_i for every boss; Drake, Dimensioning and Tolerancing Handbook, ch. 24';

/**
 * The bosses as pins with the way they may move: in rigid halves what their sockets leave, in rubber the flex the plan
 * gives. Undefined where the plan gives none.
 */
export function pinsOf({ process, bosses, flex }: Mold): Pin[] | undefined {
  if (process === 'rigid') return bosses.map((boss) => ({ x: boss.x, y: boss.y, clearance: playOf(boss) }));
  return flex === undefined ? undefined : bosses.map(({ x, y }) => ({ x, y, clearance: flex }));
}

/** In its socket, and of a cap nut in its pocket as well, toward the corners of that. */
const playOf = (boss: Boss): number =>
  sidewaysGap(boss) + (boss.kind === 'cap nut' ? boss.clearance * cornerShare : 0);

/** Fewer than two bosses are the closing check's to report. */
export const holds = ({ bosses }: Mold): boolean =>
  bosses.some(({ x, y }) => Math.hypot(x - bosses[0].x, y - bosses[0].y) > 0);

export const noFlex = (): Finding => finding('registration.no-flex', { subject: 'mold' });
