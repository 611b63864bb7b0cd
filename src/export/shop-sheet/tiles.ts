import { barReach, checkBars } from './check-bar.ts';
import { type DiscDrawing, drawDisc } from './disc-view.ts';
import type { Paper } from './paper.ts';

/** How far neighboring pages show the same, mm, so that they can be laid over each other. */
const overlap = 10;
/** Room under a tile for the bars, mm. */
const barRoom = barReach.over + barReach.under + 2;
/** Room left round the disc, mm: what is usual, and where it saves pages the least that shows the rim's line whole. */
const airs = [4, 0.5] as const;

/** One page of the plan view: which part of the disc it shows, mm in the mold frame, y up. */
export interface Tile {
  readonly column: number;
  readonly row: number;
  readonly x: number;
  readonly y: number;
}

/** Pages that cover a square of `span` mm about the axis, each showing `width` by `height` mm, first row on top. */
export function tilesOf(span: number, width: number, height: number): Tile[] {
  const along = (size: number): number => (span <= size ? 1 : Math.ceil((span - overlap) / (size - overlap)));
  const [columns, rows] = [along(width), along(height)];
  const start = (count: number, size: number): number => -(count * (size - overlap) + overlap) / 2;
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const x = start(columns, width) + column * (width - overlap);
      const y = -start(rows, height) - row * (height - overlap);
      tiles.push({ column: column + 1, row: row + 1, x, y });
    }
  }
  return tiles;
}

/** A way to part the plan view into pages. */
interface Tiling {
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
  readonly tiles: readonly Tile[];
}

/** As few pages as can be, of those upright before turned, with the usual air before less. */
function fewestTiles(paper: Paper, radius: number): Tiling {
  const ways = airs.flatMap((air) =>
    [false, true].map((turned): Tiling => {
      const { width, height: whole } = paper.free(turned);
      const height = whole - barRoom;
      const tiles = tilesOf(2 * (radius + air), width, height);
      return { turned, width, height, tiles: tiles.filter((tile) => shows(tile, width, height, radius)) };
    }),
  );
  return ways.reduce((best, way) => (way.tiles.length < best.tiles.length ? way : best));
}

/** Whether a page has any of the disc on it: those at the corners of a large one may not. */
function shows({ x, y }: Tile, width: number, height: number, radius: number): boolean {
  const past = (from: number, to: number): number => Math.max(0, from, -to);
  return Math.hypot(past(x, x + width), past(y - height, y)) < radius;
}

/** The plan view at true size, over as few pages as it takes, with register marks where pages overlap. */
export function planPages(paper: Paper, drawing: DiscDrawing): void {
  const { turned, width, height, tiles } = fewestTiles(paper, drawing.mold.disc.radius);
  const last = { column: 0, row: 0 };
  for (const { column, row } of tiles) {
    last.column = Math.max(last.column, column);
    last.row = Math.max(last.row, row);
  }
  for (const tile of tiles) {
    const of = tiles.length > 1 ? `, page ${tile.column} across, ${tile.row} down` : '';
    paper.page(`Plan view 1:1${of}`, turned);
    const frame = { x: paper.left - tile.x, y: paper.top + tile.y, scale: 1 };
    paper.pen.save();
    paper.pen.rect(paper.left, paper.top, width, height).clip();
    drawDisc(paper, drawing, frame);
    paper.pen.restore();
    registerMarks(paper, tile, last, width, height);
    checkBars(paper, paper.left, paper.bottom - barReach.under);
    const gray = drawing.buildUps.length > 0 ? ' Gray: build-ups.' : '';
    const text = `Lower half, parting face, from above.${gray} Print at 100 %, not fitted to the page.`;
    paper.write(text, paper.right, paper.bottom - 3, { size: 2.4 }, 'right');
  }
}

/** Crosses in the middle of each overlap, at the same spot of the disc on both pages that show it. */
function registerMarks(
  paper: Paper,
  tile: Tile,
  last: Pick<Tile, 'column' | 'row'>,
  width: number,
  height: number,
): void {
  const [left, right] = [paper.left + overlap / 2, paper.left + width - overlap / 2];
  const [upper, lower] = [paper.top + overlap / 2, paper.top + height - overlap / 2];
  const acrossAt = [0.25, 0.75].map((share) => paper.top + share * height);
  const downAt = [0.25, 0.75].map((share) => paper.left + share * width);
  const mark = (x: number, y: number): void => {
    paper.rule(x - 4, y, x + 4, y, 0.2);
    paper.rule(x, y - 4, x, y + 4, 0.2);
    paper.pen.lineWidth(0.2).circle(x, y, 2).stroke();
  };
  if (tile.column > 1) for (const y of acrossAt) mark(left, y);
  if (tile.column < last.column) for (const y of acrossAt) mark(right, y);
  if (tile.row > 1) for (const x of downAt) mark(x, upper);
  if (tile.row < last.row) for (const x of downAt) mark(x, lower);
}
