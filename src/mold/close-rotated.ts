import { clashDepth, type Pattern, type Peg, type Standing } from '../physics/index.ts';
import type { Boss, Mold, Process } from './mold.ts';
import { bossOutline, headReach, mouthGap, type RevolvedOutline, socketOutline } from './shapes/index.ts';

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
  readonly state: 'clear' | 'in its socket' | 'clash';
}

/**
 * Each boss at a turn (rad, the bosses against the sockets) and with `lift` mm between the halves' faces. Heads are held
 * to the sockets and the parting plane; cavities, channels and what of the parting surface is not plane are left out.
 */
export function seatsAt(mold: Closing, pattern: Pattern, turnRad: number, lift: number): BossSeat[] {
  const { bosses, process, flex } = mold;
  const offsets = pattern.offsets(turnRad);
  const sockets = bosses.map((boss) => standing(boss, socketOf(process, boss)));
  const give = process === 'rigid' ? 0 : Math.max(leastGive, flex ?? 0);
  const giving = sockets.map((socket) => ({ ...socket, outline: wider(socket.outline, give) }));
  return bosses.map((boss, i) => {
    const { id, headHeight } = boss;
    const head = standing(boss, bossOutline(boss), turnRad);
    const clash = clashDepth(head, giving, lift) > 0 ? clashDepth(head, sockets, lift) : 0;
    const state = clash > 0 ? 'clash' : lift < headHeight ? 'in its socket' : 'clear';
    return { id, off: offsets[i], clash, state };
  });
}

/** Rubber takes the shape of the head itself; a rigid half is cut with clearance. */
const socketOf = (process: Process, boss: Boss): RevolvedOutline =>
  process === 'rigid' ? socketOutline(boss, 0) : bossOutline(boss);

/** What an outline becomes where rubber is pushed aside: its top as wide as that. */
function wider(outline: Standing['outline'], by: number): Standing['outline'] {
  return by > 0 ? outline.map(([r, z]) => [r + by, z] as const) : outline;
}

/** A boss or its socket where it stands, turned about the disc's axis; without the outline's start on its own axis. */
function standing({ kind, x, y, turnRad }: Boss, outline: RevolvedOutline, aboutDiscRad = 0): Standing {
  const [c, s] = [Math.cos(aboutDiscRad), Math.sin(aboutDiscRad)];
  return {
    x: c * x - s * y,
    y: s * x + c * y,
    outline: outline.slice(1),
    ...(kind === 'hexagon' && { cornerRad: turnRad + aboutDiscRad }),
  };
}
