export interface EdgePairing {
  readonly edges: number;
  readonly open: number;
  readonly nonManifold: number;
  readonly flipped: number;
  readonly degenerate: number;
  /** Degenerate faces with a repeated vertex: they have no three edges and are left out of the pairing. */
  readonly collapsed: number;
  readonly duplicates: number;
  readonly pinched: number;
  readonly shells: number;
  /** Corners (3 face + k) of the first edge, face or vertex found at fault; empty where all is well. */
  readonly faultCorners: readonly number[];
}

/**
 * Pairs every face's edges. `ids` holds three vertex numbers per face, below `vertices`; `noArea` marks faces
 * without area. Half-edge h runs from corner h to the next corner of its face.
 */
export function pairEdges(ids: Int32Array, vertices: number, noArea: Uint8Array): EdgePairing {
  const degrees = degreesOf(ids, vertices);
  const fans = new Groups(ids.length);
  const shells = new Groups(noArea.length);
  const faces = sortOutFaces(ids, degrees, noArea);
  const edges = new EdgeLists(degrees, ids.length);
  for (let face = 0; face < noArea.length; face++) {
    if (faces.collapsed[face]) continue;
    for (let h = 3 * face; h < 3 * face + 3; h++) {
      const twin = edges.meet(ids[h], ids[nextCorner(h)], h);
      if (twin < 0) continue;
      shells.unite(face, Math.floor(twin / 3));
      const opposite = ids[twin] !== ids[h];
      fans.unite(h, opposite ? nextCorner(twin) : twin);
      fans.unite(nextCorner(h), opposite ? twin : nextCorner(twin));
    }
  }
  const tally = edges.tally();
  const pinches = countPinches(ids, vertices, fans, faces.collapsed);
  const firstFault = [tally.faultCorners, faces.faultCorners, pinches.faultCorners].find((f) => f.length > 0);
  return {
    edges: edges.count,
    open: tally.open,
    nonManifold: tally.nonManifold,
    flipped: tally.flipped,
    degenerate: faces.degenerate,
    collapsed: faces.collapsedCount,
    duplicates: faces.duplicates,
    pinched: pinches.count,
    shells: shells.count - faces.collapsedCount,
    faultCorners: firstFault ?? [],
  };
}

const nextCorner = (corner: number): number => (corner % 3 === 2 ? corner - 2 : corner + 1);

/** Corners at each vertex. Lists are kept where they are shortest: the middle of a fan may have thousands. */
function degreesOf(ids: Int32Array, vertices: number): Int32Array {
  const degrees = new Int32Array(vertices);
  for (let corner = 0; corner < ids.length; corner++) degrees[ids[corner]]++;
  return degrees;
}

/** Undirected edges, listed at the end with fewer corners: some three on average. How many faces run along each way. */
class EdgeLists {
  count = 0;
  private readonly heads: Int32Array;
  /** For each edge the next one in its list, the end it is not listed at, its first half-edge, and faces along each way. */
  private readonly next: Int32Array;
  private readonly other: Int32Array;
  private readonly first: Int32Array;
  private readonly upward: Int32Array;
  private readonly downward: Int32Array;

  constructor(
    private readonly degrees: Int32Array,
    halfEdges: number,
  ) {
    this.heads = new Int32Array(degrees.length).fill(-1);
    this.next = new Int32Array(halfEdges);
    this.other = new Int32Array(halfEdges);
    this.first = new Int32Array(halfEdges);
    this.upward = new Int32Array(halfEdges);
    this.downward = new Int32Array(halfEdges);
  }

  /** Enters half-edge h from vertex a to b; gives the first half-edge on the same edge, or -1. */
  meet(a: number, b: number, h: number): number {
    const more = this.degrees[a] - this.degrees[b];
    const at = more < 0 || (more === 0 && a < b) ? a : b;
    const other = a + b - at;
    let edge = this.heads[at];
    while (edge >= 0 && this.other[edge] !== other) edge = this.next[edge];
    const known = edge >= 0;
    if (!known) {
      edge = this.count++;
      this.next[edge] = this.heads[at];
      this.heads[at] = edge;
      this.other[edge] = other;
      this.first[edge] = h;
    }
    if (a < b) this.upward[edge]++;
    else this.downward[edge]++;
    return known ? this.first[edge] : -1;
  }

  tally(): Pick<EdgePairing, 'open' | 'nonManifold' | 'flipped' | 'faultCorners'> {
    let open = 0;
    let nonManifold = 0;
    let flipped = 0;
    let fault = -1;
    for (let edge = 0; edge < this.count; edge++) {
      const up = this.upward[edge];
      const down = this.downward[edge];
      if (up === 1 && down === 1) continue;
      if (up + down === 1) open++;
      else if (up + down > 2) nonManifold++;
      else flipped++;
      if (fault < 0) fault = this.first[edge];
    }
    return { open, nonManifold, flipped, faultCorners: fault < 0 ? [] : [fault, nextCorner(fault)] };
  }
}

/** Finds degenerate faces and faces with the vertices of an earlier one. */
function sortOutFaces(ids: Int32Array, degrees: Int32Array, noArea: Uint8Array) {
  const collapsed = new Uint8Array(noArea.length);
  const known = new FaceLists(degrees, noArea.length);
  let degenerate = 0;
  let collapsedCount = 0;
  let duplicates = 0;
  let fault = -1;
  for (let face = 0; face < noArea.length; face++) {
    const a = ids[face * 3];
    const b = ids[face * 3 + 1];
    const c = ids[face * 3 + 2];
    const repeated = a === b || b === c || c === a;
    if (repeated) {
      collapsed[face] = 1;
      collapsedCount++;
    }
    if (repeated || noArea[face]) degenerate++;
    else if (known.has(a, b, c)) duplicates++;
    else continue;
    if (fault < 0) fault = face * 3;
  }
  const faultCorners = fault < 0 ? [] : [fault, fault + 1, fault + 2];
  return { collapsed, collapsedCount, degenerate, duplicates, faultCorners };
}

/** Faces by their three vertices in whatever order, listed at the one with fewest corners. */
class FaceLists {
  private readonly heads: Int32Array;
  private readonly next: Int32Array;
  private readonly low: Int32Array;
  private readonly middle: Int32Array;
  private readonly high: Int32Array;
  private count = 0;

  constructor(
    private readonly degrees: Int32Array,
    faces: number,
  ) {
    this.heads = new Int32Array(degrees.length).fill(-1);
    this.next = new Int32Array(faces);
    this.low = new Int32Array(faces);
    this.middle = new Int32Array(faces);
    this.high = new Int32Array(faces);
  }

  /** Whether such a face was asked for before; remembers it. */
  has(a: number, b: number, c: number): boolean {
    const low = Math.min(a, b, c);
    const high = Math.max(a, b, c);
    const middle = a + b + c - low - high;
    const at = this.leastOf(low, middle, high);
    for (let face = this.heads[at]; face >= 0; face = this.next[face])
      if (this.low[face] === low && this.middle[face] === middle && this.high[face] === high) return true;
    const face = this.count++;
    this.next[face] = this.heads[at];
    this.heads[at] = face;
    this.low[face] = low;
    this.middle[face] = middle;
    this.high[face] = high;
    return false;
  }

  private leastOf(low: number, middle: number, high: number): number {
    const { degrees } = this;
    const at = degrees[middle] < degrees[low] ? middle : low;
    return degrees[high] < degrees[at] ? high : at;
  }
}

/** Vertices whose corners fall into more than one fan (corners joined across shared edges). */
function countPinches(ids: Int32Array, vertices: number, fans: Groups, collapsed: Uint8Array) {
  const fanOf = new Int32Array(vertices).fill(-1);
  const pinched = new Uint8Array(vertices);
  let count = 0;
  let fault = -1;
  for (let corner = 0; corner < ids.length; corner++) {
    if (collapsed[Math.floor(corner / 3)]) continue;
    const vertex = ids[corner];
    const fan = fans.find(corner);
    if (fanOf[vertex] < 0) fanOf[vertex] = fan;
    else if (fanOf[vertex] !== fan && !pinched[vertex]) {
      pinched[vertex] = 1;
      count++;
      if (fault < 0) fault = corner;
    }
  }
  return { count, faultCorners: fault < 0 ? [] : [fault] };
}

/** Disjoint sets with path halving (Tarjan); the lower number stands for its set. */
class Groups {
  count: number;
  private readonly parent: Int32Array;

  constructor(size: number) {
    this.count = size;
    this.parent = new Int32Array(size);
    for (let i = 0; i < size; i++) this.parent[i] = i;
  }

  find(item: number): number {
    const { parent } = this;
    let at = item;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  }

  unite(a: number, b: number): void {
    const x = this.find(a);
    const y = this.find(b);
    if (x === y) return;
    this.count--;
    if (x < y) this.parent[y] = x;
    else this.parent[x] = y;
  }
}
