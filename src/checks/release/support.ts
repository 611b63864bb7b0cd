import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import {
  boundsOf,
  type Matrix4,
  moveMesh,
  scaling,
  type TriangleMesh,
  type Vec3,
} from '../../geometry/index.ts';
import { type Columns, columnsOf } from '../../mesh/index.ts';
import {
  type Check,
  check,
  cropSurface,
  heightAt,
  leastBuildUp,
  type Mold,
  masterOf,
  type PartingSurface,
  type Placement,
} from '../../mold/index.ts';
import { freeLength } from './free-length.ts';

/** Columns stand this far apart, mm, or farther where a master would need more of them than `mostColumns`. */
const finestCell = 0.15;
const mostColumns = 25_000;
/** Gaps under this, mm, close by themselves: build-ups leave as much at their edge. */
const smallGap = leastBuildUp;
/** Bits under this area, mm2, are no more than a rounded edge. */
const smallArea = 1;

interface SupportInput {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  /** The parting surface where a build-up rises to it; null where the placement has none. */
  readonly builtUp: PartingSurface | null;
  readonly clearance: number;
  readonly limit: number;
  readonly estimated: boolean;
}

/**
 * Bits of a master that stand free over the parting plane (or hang free under it): when the half is pressed, nothing
 * is under them and they bend. Each is measured by its area, its greatest gap, its free length (from where the master
 * is held, within the master) and its slenderness, free length over mean thickness (volume over area). A build-up
 * counts as far as it rises: bits it holds are ticked off as `support.held`. Of parts that lie over others only the
 * lowest is looked at.
 */
export const support: Check = check<SupportInput>({
  id: 'support',
  title: 'Support of thin bits',
  follows: false,
  processes: ['rubber'],
  units: (mold) =>
    mold.placements.map((placement) => {
      const { id } = placement;
      return { subject: id, about: [id], input: inputOf(mold, placement) };
    }),
  run: (input) => {
    const placed = moveMesh(input.mesh, input.matrix);
    const bits = ([1, -1] as const).flatMap((side) => slenderBits(placed, side, input));
    if (bits.length === 0) return {};
    const loose = bits.filter(({ held }) => !held);
    return { findings: loose.map((bit) => notHeld(input, bit)), figures: figuresOf(input, bits) };
  },
});

function inputOf(mold: Mold, { id, master, matrix, x, y, reach, estimated }: Placement): SupportInput {
  const box = { min: [x - reach, y - reach], max: [x + reach, y + reach] } as const;
  const wished = mold.supports.find(({ placement }) => placement === id);
  const built = wished !== undefined && !mold.parting.flat;
  return {
    id,
    mesh: masterOf(mold, { id, master }).mesh,
    matrix,
    builtUp: built ? cropSurface(mold.parting, box) : null,
    clearance: wished?.clearance ?? 0,
    limit: mold.limits.slenderness,
    estimated,
  };
}

/** A connected bit with nothing under it (side 1) or over it (side -1). Lengths in mm. */
interface Bit {
  readonly side: 1 | -1;
  readonly area: number;
  readonly gap: number;
  readonly thickness: number;
  readonly length: number;
  /** Its end that is farthest from where the master is held. */
  readonly place: Vec3;
  readonly held: boolean;
}

/** What lies under each node when the master is laid down; seen from below on side -1. */
interface Floor {
  readonly columns: Columns;
  /** 0 nothing there, 1 free, 2 held. */
  readonly mask: Uint8Array;
  readonly length: Float64Array;
}

function slenderBits(placed: TriangleMesh, side: 1 | -1, input: SupportInput): Bit[] {
  const mesh = side === 1 ? placed : mirrored(placed);
  const { min, max } = boundsOf(mesh.positions);
  const cell = Math.max(finestCell, Math.sqrt(((max[0] - min[0]) * (max[1] - min[1])) / mostColumns));
  const columns = columnsOf(mesh, { cell });
  const { builtUp, clearance, limit } = input;
  const bare = floorOf(columns, () => 0, smallGap);
  const bits = bitsOf(bare, side).filter(({ length, thickness }) => length > limit * thickness);
  if (!builtUp || bits.length === 0) return bits;
  const built = floorOf(columns, (x, y) => Math.max(0, side * heightAt(builtUp, x, y)), smallGap + clearance);
  const left = bitsOf(built, side).filter(({ length, thickness }) => length > limit * thickness);
  return [
    ...bits.filter((bit) => !left.some((one) => overlaps(one, bit))).map((bit) => ({ ...bit, held: true })),
    ...left,
  ];
}

/** Bits are compared by where they end: what is left of a bit ends where the whole did, or short of it. */
const overlaps = (left: Bit, whole: Bit): boolean =>
  Math.hypot(left.place[0] - whole.place[0], left.place[1] - whole.place[1]) <= whole.length;

/** Seen from below: z turned over, and the faces with it. */
function mirrored(mesh: TriangleMesh): TriangleMesh {
  const { positions, triangles } = moveMesh(mesh, scaling(1, 1, -1));
  return { positions, triangles };
}

function floorOf(columns: Columns, under: (x: number, y: number) => number, gap: number): Floor {
  const { nx, cell, x0, y0, start, z } = columns;
  const mask = new Uint8Array(start.length - 1);
  for (let k = 0; k < mask.length; k++) {
    if (start[k] === start[k + 1]) continue;
    const i = k % nx;
    const height = z[start[k]] - under(x0 + i * cell, y0 + ((k - i) / nx) * cell);
    mask[k] = height > gap ? 1 : 2;
  }
  return { columns, mask, length: freeLength(mask, columns) };
}

/** Connected free nodes, each group as one bit; groups that nothing holds at all are another check's to report. */
function bitsOf({ columns, mask, length }: Floor, side: 1 | -1): Bit[] {
  const seen = new Uint8Array(mask.length);
  const bits: Bit[] = [];
  for (let first = 0; first < mask.length; first++) {
    if (mask[first] !== 1 || seen[first]) continue;
    const nodes = groupFrom(first, mask, seen, columns);
    const area = nodes.length * columns.cell ** 2;
    const tip = nodes.reduce((far, k) => (length[k] > length[far] ? k : far), nodes[0]);
    if (area < smallArea || !Number.isFinite(length[tip])) continue;
    bits.push(bitOf(nodes, tip, { columns, mask, length }, side));
  }
  return bits;
}

function groupFrom(first: number, mask: Uint8Array, seen: Uint8Array, { nx, ny }: Columns): number[] {
  const nodes = [first];
  seen[first] = 1;
  for (let at = 0; at < nodes.length; at++) {
    const i = nodes[at] % nx;
    const j = (nodes[at] - i) / nx;
    for (const [di, dj] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ]) {
      const [u, v] = [i + di, j + dj];
      const k = v * nx + u;
      if (u < 0 || v < 0 || u >= nx || v >= ny || mask[k] !== 1 || seen[k]) continue;
      seen[k] = 1;
      nodes.push(k);
    }
  }
  return nodes;
}

function bitOf(nodes: readonly number[], tip: number, { columns, length }: Floor, side: 1 | -1): Bit {
  const { start, z, nx, cell, x0, y0 } = columns;
  let gap = 0;
  let solid = 0;
  for (const k of nodes) {
    gap = Math.max(gap, z[start[k]]);
    // The lowest layer is the one that bends; what may lie above it does not hold it.
    if (start[k + 1] - start[k] > 1) solid += z[start[k] + 1] - z[start[k]];
  }
  const i = tip % nx;
  const place: Vec3 = [x0 + i * cell, y0 + ((tip - i) / nx) * cell, side * z[start[tip]]];
  const thickness = solid / nodes.length;
  return { side, area: nodes.length * cell * cell, gap, thickness, length: length[tip], place, held: false };
}

function notHeld({ id, limit }: SupportInput, { side, area, gap, thickness, length, place }: Bit): Finding {
  return finding('support.free', {
    // Rubber is under what hangs below the plane; what is missing over it flows in as the upper half is pressed.
    severity: side === 1 ? 'warn' : 'note',
    subject: id,
    place,
    values: {
      measured: length / thickness,
      limit,
      area,
      thickness,
      length,
      side: side === 1 ? 'under' : 'over',
      gap,
    },
  });
}

function figuresOf({ id, estimated }: SupportInput, bits: readonly Bit[]): Figure[] {
  const source =
    'columns of the placed master over the parting plane; free length within the master (Zhao 2005)';
  const figure = (name: FigureName, value: number, place?: Vec3): Figure =>
    makeFigure(name, { subject: id, value, source, estimated, ...(place && { places: [place] }) });
  const slenderness = ({ length, thickness }: Bit): number => length / thickness;
  const worst = bits.reduce((most, bit) => (slenderness(bit) > slenderness(most) ? bit : most));
  const areaOf = (held: boolean): number =>
    bits.filter((bit) => bit.held === held).reduce((sum, { area }) => sum + area, 0);
  return [
    figure('support.slenderness', slenderness(worst), worst.place),
    figure('support.gap', Math.max(...bits.map(({ gap }) => gap))),
    figure('support.free', areaOf(false)),
    figure('support.held', areaOf(true)),
  ];
}
