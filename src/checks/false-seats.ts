/** A boss seen from above, with what decides whether its head enters a socket. mm. */
export interface Peg {
  readonly x: number;
  readonly y: number;
  readonly headRadius: number;
  readonly headHeight: number;
}

/** A turn (rad, between 0 and 2 pi) at which the halves would sit, and how far the worst boss is then off. */
export interface FalseSeat {
  readonly angleRad: number;
  readonly misfit: number;
}

/** Which sockets each boss's head enters: no wider and no higher than its own head by more than `slack` mm. */
const fitsOf = (pegs: readonly Peg[], slack: number): number[][] =>
  pegs.map((head) =>
    pegs.flatMap((socket, j) =>
      head.headRadius <= socket.headRadius + slack && head.headHeight <= socket.headHeight + slack ? [j] : [],
    ),
  );

/** Squared distance of boss i, turned by a, to socket j: `far` - `reach` cos(a - phase). */
interface Approach {
  readonly far: number;
  readonly reach: number;
  readonly phase: number;
}

/**
 * How well a pattern of bosses closes when one half is turned against the other about the disc's axis.
 * d(a) is the greatest distance of any boss to its socket, turned by a, when every boss is given another socket that
 * its head enters and the giving is the best there is (bottleneck assignment). d(0) = 0. Lifting, tilting and
 * shifting are not looked at: the rims show a shift.
 */
export class Pattern {
  private readonly fits: number[][];
  private readonly approach: Approach[][];

  constructor(pegs: readonly Peg[], slack: number) {
    this.fits = fitsOf(pegs, slack);
    this.approach = pegs.map((p) =>
      pegs.map((q) => ({
        far: p.x * p.x + p.y * p.y + q.x * q.x + q.y * q.y,
        reach: 2 * Math.hypot(p.x, p.y) * Math.hypot(q.x, q.y),
        phase: Math.atan2(q.y, q.x) - Math.atan2(p.y, p.x),
      })),
    );
  }

  /** d(a), mm. */
  misfit(angleRad: number): number {
    const squares = this.squares(angleRad);
    const steps = [...new Set(this.fits.flatMap((sockets, i) => sockets.map((j) => squares[i][j])))].sort(
      (a, b) => a - b,
    );
    // Everyone in his own socket is always possible, so the greatest step is enough.
    let low = 0;
    let high = steps.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.seats(squares, steps[middle])) high = middle;
      else low = middle + 1;
    }
    return Math.sqrt(steps[low]);
  }

  /**
   * Every seat but the true one at angle 0, nearest fit first: the local minima of d below `most` mm. Between critical angles the
   * order of all boss-to-socket distances stays the same and d follows a single one of them without a turn, so its
   * minima lie where one distance is least (boss on the ray of the socket) or where one that shrinks meets one that
   * grows. All these angles are tried, in closed form; none is sampled.
   */
  falseSeats(most: number): FalseSeat[] {
    const seats: FalseSeat[] = [];
    for (const angle of this.criticalAngles()) {
      if (angle < 1e-7 || angle > 2 * Math.PI - 1e-7 || this.bound(angle) > most) continue;
      const misfit = this.misfit(angle);
      if (misfit > most || !this.isLowest(angle, misfit)) continue;
      if (!seats.some((seat) => Math.abs(seat.angleRad - angle) < 1e-6))
        seats.push({ angleRad: angle, misfit });
    }
    return seats.sort((a, b) => a.misfit - b.misfit || a.angleRad - b.angleRad);
  }

  private isLowest(angle: number, misfit: number): boolean {
    const beside = 1e-6;
    const slack = 1e-12 + misfit * 1e-12;
    return this.misfit(angle - beside) >= misfit - slack && this.misfit(angle + beside) >= misfit - slack;
  }

  private squares(angle: number): number[][] {
    return this.approach.map((row) =>
      row.map(({ far, reach, phase }) => Math.max(0, far - reach * Math.cos(angle - phase))),
    );
  }

  /** No assignment can do better than every boss in its own nearest socket. */
  private bound(angle: number): number {
    let worst = 0;
    for (const [i, sockets] of this.fits.entries()) {
      let best = Number.POSITIVE_INFINITY;
      for (const j of sockets) {
        const { far, reach, phase } = this.approach[i][j];
        best = Math.min(best, far - reach * Math.cos(angle - phase));
      }
      worst = Math.max(worst, best);
    }
    return Math.sqrt(Math.max(0, worst)) - 1e-9;
  }

  private *criticalAngles(): Generator<number> {
    const all = this.fits.flatMap((sockets, i) => sockets.map((j) => this.approach[i][j]));
    for (const { reach, phase } of all) if (reach > 0) yield round(phase);
    for (let k = 0; k < all.length; k++) {
      for (let l = k + 1; l < all.length; l++) yield* meetings(all[k], all[l]);
    }
  }

  /** Whether every boss finds a socket of its own within the square given (augmenting paths). */
  private seats(squares: readonly (readonly number[])[], square: number): boolean {
    const taken = new Int32Array(squares.length).fill(-1);
    const place = (boss: number, tried: Uint8Array): boolean => {
      for (const socket of this.fits[boss]) {
        if (squares[boss][socket] > square || tried[socket]) continue;
        tried[socket] = 1;
        if (taken[socket] >= 0 && !place(taken[socket], tried)) continue;
        taken[socket] = boss;
        return true;
      }
      return false;
    };
    return squares.every((_, boss) => place(boss, new Uint8Array(squares.length)));
  }
}

/** Where two squared distances are equal while one shrinks and one grows: far + C cos a + S sin a = 0. */
function* meetings(p: Approach, q: Approach): Generator<number> {
  const c = q.reach * Math.cos(q.phase) - p.reach * Math.cos(p.phase);
  const s = q.reach * Math.sin(q.phase) - p.reach * Math.sin(p.phase);
  const size = Math.hypot(c, s);
  const share = (q.far - p.far) / size;
  if (!(size > 1e-12) || Math.abs(share) > 1) return;
  const middle = Math.atan2(s, c);
  for (const angle of [middle + Math.acos(share), middle - Math.acos(share)]) {
    const slopes = p.reach * Math.sin(angle - p.phase) * q.reach * Math.sin(angle - q.phase);
    if (slopes <= 0) yield round(angle);
  }
}

const round = (angle: number): number => {
  const turn = angle % (2 * Math.PI);
  return turn < 0 ? turn + 2 * Math.PI : turn;
};
