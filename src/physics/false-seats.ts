/** A boss seen from above, with what decides whether its head enters a socket. mm. */
export interface Peg {
  readonly x: number;
  readonly y: number;
  readonly headRadius: number;
  readonly headHeight: number;
  /** Of a hexagon the radius to its corners; left out, the head is round. */
  readonly corners?: number;
}

/** A turn (rad, between 0 and 2 pi) at which the halves would sit, and how far the worst boss is then off. */
export interface FalseSeat {
  readonly angleRad: number;
  readonly misfit: number;
}

/**
 * Which sockets each boss's head enters: no wider and no higher than its own head by more than `slack` mm. A hexagon
 * enters a round socket by its corners; a hexagonal one by its flats, however it is turned, which is to err on the side
 * of entering.
 */
const fitsOf = (pegs: readonly Peg[], slack: number): number[][] =>
  pegs.map((head) =>
    pegs.flatMap((socket, j) => {
      const wide = socket.corners === undefined ? (head.corners ?? head.headRadius) : head.headRadius;
      return wide <= socket.headRadius + slack && head.headHeight <= socket.headHeight + slack ? [j] : [];
    }),
  );

/** Squared distance of boss i, turned by a, to socket j: far - cosine cos a - sine sin a. */
interface Approach {
  readonly far: number;
  readonly cosine: number;
  readonly sine: number;
}

const squareAt = ({ far, cosine, sine }: Approach, c: number, s: number): number =>
  Math.max(0, far - cosine * c - sine * s);

/** An angle where d may have a minimum, and what d squared then is. */
interface Critical {
  readonly angle: number;
  readonly square: number;
}

/** rad and mm: far below anything that can be measured on a disc. */
const sameAngle = 1e-6;
const sameLength = 1e-5;

/** Misfits that differ by rounding alone are equal, so that the order does not hang on it. */
const steps = (misfit: number): number => Math.round(misfit / sameLength);

/**
 * How well a pattern of bosses closes when one half is turned against the other about the disc's axis.
 * d(a) is the greatest distance of any boss to its socket, turned by a, when every boss is given another socket that
 * its head enters and the giving is the best there is (bottleneck assignment). d(0) = 0. Lifting, tilting and
 * shifting are not looked at: the rims show a shift.
 */
export class Pattern {
  private readonly fits: number[][];
  private readonly approach: Approach[][];
  private readonly farthest: number;

  constructor(pegs: readonly Peg[], slack: number) {
    this.fits = fitsOf(pegs, slack);
    this.approach = pegs.map((p) =>
      pegs.map((q) => ({
        far: p.x * p.x + p.y * p.y + q.x * q.x + q.y * q.y,
        cosine: 2 * (p.x * q.x + p.y * q.y),
        sine: 2 * (p.x * q.y - p.y * q.x),
      })),
    );
    this.farthest = Math.max(...this.approach.flat().map(({ far }) => far));
  }

  /** d(a), mm. */
  misfit(angleRad: number): number {
    const squares = this.squares(angleRad);
    const tried = [...new Set(this.fits.flatMap((sockets, i) => sockets.map((j) => squares[i][j])))].sort(
      (a, b) => a - b,
    );
    // Everyone in his own socket is always possible, so the greatest step is enough.
    let low = 0;
    let high = tried.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.seats(squares, tried[middle])) high = middle;
      else low = middle + 1;
    }
    return Math.sqrt(tried[low]);
  }

  /**
   * Every seat but the true one at angle 0 that misses by less than `most` mm, nearest fit first; where there is
   * none, the one that comes nearest, if the pattern has any. Seats are the local minima of d. Between critical
   * angles the order of all boss-to-socket distances stays the same and d follows a single one of them without a
   * turn, so its minima lie where one distance is least (boss on the ray of the socket) or where one that shrinks
   * meets one that grows. All these angles are tried, in closed form; none is sampled.
   */
  falseSeats(most: number): FalseSeat[] {
    const seats: FalseSeat[] = [];
    let nearest = Number.POSITIVE_INFINITY;
    for (const { angle, square } of this.criticalAngles()) {
      if (angle < sameAngle || angle > 2 * Math.PI - sameAngle) continue;
      if (Math.sqrt(square) > Math.max(most, nearest) + sameLength) continue;
      if (seats.some((seat) => Math.abs(seat.angleRad - angle) < sameAngle)) continue;
      if (!this.isBottleneck(angle, square)) continue;
      const misfit = this.misfit(angle);
      if (!this.isLowest(angle, misfit)) continue;
      seats.push({ angleRad: angle, misfit });
      nearest = Math.min(nearest, misfit);
    }
    seats.sort((a, b) => steps(a.misfit) - steps(b.misfit) || a.angleRad - b.angleRad);
    return seats.filter(({ misfit }, i) => i === 0 || misfit < most);
  }

  private isLowest(angle: number, misfit: number): boolean {
    const slack = 1e-12 + misfit * 1e-12;
    return [-sameAngle, sameAngle].every((beside) => this.misfit(angle + beside) >= misfit - slack);
  }

  /** Whether d at this angle is the root of `square`: all find a seat within it, and not within less. */
  private isBottleneck(angle: number, square: number): boolean {
    const slack = 1e-11 * this.farthest;
    // Nearly all angles fall out here, at the first few bosses: no distance is worked out that is not looked at.
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    for (const [i, sockets] of this.fits.entries()) {
      const row = this.approach[i];
      if (sockets.every((j) => squareAt(row[j], c, s) > square + slack)) return false;
    }
    const squares = this.squares(angle);
    return this.seats(squares, square + slack) && !this.seats(squares, square - slack);
  }

  private squares(angle: number): number[][] {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return this.approach.map((row) => row.map((one) => squareAt(one, c, s)));
  }

  private *criticalAngles(): Generator<Critical> {
    const all = this.fits.flatMap((sockets, i) => sockets.map((j) => this.approach[i][j]));
    for (const { far, cosine, sine } of all) {
      const reach = Math.hypot(cosine, sine);
      if (reach > 0) yield { angle: round(Math.atan2(sine, cosine)), square: Math.max(0, far - reach) };
    }
    for (let k = 0; k < all.length; k++) {
      for (let l = k + 1; l < all.length; l++) yield* meetings(all[k], all[l]);
    }
  }

  /** How far each boss is then from the socket it is given, mm; the greatest of them is d(a). */
  offsets(angleRad: number): number[] {
    const squares = this.squares(angleRad);
    const misfit = this.misfit(angleRad);
    const taken = this.seating(squares, misfit * misfit + 1e-11 * this.farthest);
    if (!taken) throw new Error('false seats: nobody sits at the misfit found');
    const off = new Array<number>(squares.length).fill(0);
    for (const [socket, boss] of taken.entries()) off[boss] = Math.sqrt(squares[boss][socket]);
    return off;
  }

  private seats(squares: readonly (readonly number[])[], square: number): boolean {
    return this.seating(squares, square) !== undefined;
  }

  /** The boss in each socket, if every boss finds a socket of its own within the square given (augmenting paths). */
  private seating(squares: readonly (readonly number[])[], square: number): Int32Array | undefined {
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
    return squares.every((_, boss) => place(boss, new Uint8Array(squares.length))) ? taken : undefined;
  }
}

/** Where two squared distances are equal while one shrinks and one grows: far + C cos a + S sin a = 0. */
function* meetings(p: Approach, q: Approach): Generator<Critical> {
  const c = q.cosine - p.cosine;
  const s = q.sine - p.sine;
  const size = Math.hypot(c, s);
  const share = (q.far - p.far) / size;
  if (!(size > 1e-12) || Math.abs(share) > 1) return;
  const middle = Math.atan2(s, c);
  const spread = Math.acos(share);
  for (const angle of [middle + spread, middle - spread]) {
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    if ((p.cosine * y - p.sine * x) * (q.cosine * y - q.sine * x) > 0) continue;
    yield { angle: round(angle), square: Math.max(0, p.far - p.cosine * x - p.sine * y) };
  }
}

const round = (angle: number): number => {
  const turn = angle % (2 * Math.PI);
  return turn < 0 ? turn + 2 * Math.PI : turn;
};
