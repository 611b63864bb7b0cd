/** Width (x) and depth (y) in mm. */
export interface Area {
  readonly x: number;
  readonly y: number;
}

/** Where a piece stands: number of the bed, and its box's corner nearest the bed's corner, mm from that corner. */
export interface BedPlace extends Area {
  readonly bed: number;
}

/** Left free round every piece and along the edges of the bed, mm. Common practice, no published source. */
const bedMargin = 3;

interface Shelf {
  readonly bed: number;
  readonly y: number;
  readonly depth: number;
  end: number;
}

/**
 * Pieces laid side by side in rows, deepest first, each in the first row that has room; a new bed where none has. A
 * piece larger than a bed gets one of its own all the same, at its corner. Places come in the order of the pieces.
 */
export function placeOnBeds(pieces: readonly Area[], bed: Area, margin = bedMargin): BedPlace[] {
  const order = pieces.map((_, i) => i).sort((a, b) => pieces[b].y - pieces[a].y || a - b);
  const shelves: Shelf[] = [];
  const places: BedPlace[] = new Array(pieces.length);
  for (const i of order) {
    const { x, y } = pieces[i];
    const fits = (shelf: Shelf): boolean => y <= shelf.depth && shelf.end + x + margin <= bed.x;
    const shelf = shelves.find(fits) ?? newShelf(shelves, y, bed, margin);
    places[i] = { bed: shelf.bed, x: shelf.end, y: shelf.y };
    shelf.end += x + margin;
  }
  return places;
}

function newShelf(shelves: Shelf[], depth: number, bed: Area, margin: number): Shelf {
  const last = shelves.at(-1);
  const above = last ? last.y + last.depth + margin : margin;
  const shelf: Shelf =
    last && above + depth + margin <= bed.y
      ? { bed: last.bed, y: above, depth, end: margin }
      : { bed: last ? last.bed + 1 : 0, y: margin, depth, end: margin };
  shelves.push(shelf);
  return shelf;
}

/** A bed for pieces whose plan names none: near square, and wide enough for each piece. */
export function roomyBed(pieces: readonly Area[], margin = bedMargin): Area {
  const total = pieces.reduce((sum, { x, y }) => sum + (x + margin) * (y + margin), 0);
  const side = Math.ceil(Math.max(1.2 * Math.sqrt(total), ...pieces.map(({ x }) => x + 2 * margin)));
  return { x: side, y: Number.POSITIVE_INFINITY };
}
