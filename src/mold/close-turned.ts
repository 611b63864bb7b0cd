import { clashDepth, type Pattern, type Peg, type Standing } from '../physics/index.ts';
import { bossOutline, headReach, mouthGap, socketOutline } from './boss-shape.ts';
import type { Boss, Mold, Process } from './mold.ts';
import type { TurnedOutline } from './turned.ts';

/**
 * How much larger than its socket a head may be and still go in: rubber gives way, rigid halves only as much as
 * their sockets are wider and a rough print allows. Our own allowance; no published source.
 */
const slackOf: Readonly<Record<Process, number>> = { rubber: 1, poured: 1, rigid: 0.3 };

/** What rubber is pushed aside by a head without a word, mm, where the plan gives no flex. Common practice, no published source. */
const leastGive = 0.1;

type Closing = Pick<Mold, 'bosses' | 'process' | 'flex'>;

/** The bosses as the pattern that decides which way the halves close. */
export const pegsOf = ({ bosses }: Pick<Mold, 'bosses'>): (Peg & { readonly id: string })[] =>
  bosses.map((boss) => {
    const { id, x, y, headRadius, headHeight } = boss;
    return { id, x, y, headRadius, headHeight, ...(boss.kind === 'hexagon' && { corners: headReach(boss) }) };
  });

export const slackIn = ({ bosses, process }: Closing): number =>
  slackOf[process] + Math.max(0, ...(process === 'rigid' ? bosses.map(mouthGap) : []));

/** A boss while the upper half stands turned and lifted over the lower one. */
export interface BossSeat {
  readonly id: string;
  /** Distance from the socket it is given, mm. */
  readonly off: number;
  /** How deep its head reaches into the upper half's material, mm; 0 where it is clear or in its socket. */
  readonly clash: number;
  readonly is: 'clear' | 'in its socket' | 'clash';
}

/**
 * Each boss at a turn (rad, the bosses against the sockets) and with `lift` mm between the halves' faces. Heads are held
 * to the sockets and the parting plane, hexagons by the circle between their flats; cavities, channels and what of the parting surface is not plane are left out.
 */
export function seatsAt(mold: Closing, pattern: Pattern, turnRad: number, lift: number): BossSeat[] {
  const { bosses, process, flex } = mold;
  const give = process === 'rigid' ? 0 : Math.max(leastGive, flex ?? 0);
  const offsets = pattern.offsets(turnRad);
  const sockets = bosses.map((boss) => standing(boss.x, boss.y, socketOf(process, boss)));
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  return bosses.map((boss, i) => {
    const { id, x, y, headHeight } = boss;
    const head = standing(c * x - s * y, s * x + c * y, bossOutline(boss));
    const off = offsets[i];
    const clash = off <= give ? 0 : clashDepth(head, sockets, lift);
    return { id, off, clash, is: clash > 0 ? 'clash' : lift < headHeight ? 'in its socket' : 'clear' };
  });
}

/** Rubber takes the shape of the head itself; a rigid half is cut with clearance. */
const socketOf = (process: Process, boss: Boss): TurnedOutline =>
  process === 'rigid' ? socketOutline(boss, 0) : bossOutline(boss);

/** Without the outline's start on the axis. */
const standing = (x: number, y: number, outline: TurnedOutline): Standing => ({
  x,
  y,
  outline: outline.slice(1),
});
