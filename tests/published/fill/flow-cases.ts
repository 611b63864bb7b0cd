import { readFileSync } from 'node:fs';
import { cellAt, wall } from '../../../src/fill/cells.ts';
import { readMesh } from '../../../src/mesh/index.ts';
import { type Box, cut } from '../../fill/shapes.ts';

/** Whether a point is in it, mm. */
type Inside = (x: number, y: number, z: number) => boolean;

/**
 * A cavity with its feed for a two-phase flow run; the forecast fills the very same cells. mm; x leads outward from the
 * inner end of the cavity, z up.
 */
export interface FlowCase {
  readonly name: string;
  /** What of it the runs are to tell. */
  readonly about: string;
  readonly cell: number;
  readonly cavity: Inside;
  /** Channels from x = -3 to the cavity. Metal comes in at the lower y half of their inner end, air goes out at the other. */
  readonly feed: readonly Box[];
  /** Width and depth of the gate where it opens into the cavity. */
  readonly gate: readonly [number, number];
  /** Walls in it are open to the air. */
  readonly vent?: Box;
  /** Of the cavity with its feed. */
  readonly bounds: Box;
  /** Pieces of the cavity that the share of air is told of. */
  readonly pieces: Readonly<Record<string, Inside>>;
  /** Length of the run, s. */
  readonly endS: number;
}

export const isIn = ([low, high]: Box, at: readonly number[]): boolean =>
  at.every((value, axis) => value > low[axis] && value < high[axis]);

const straight: Box = [
  [-3, -1.5, -0.75],
  [0, 1.5, 0.75],
];
/** From beside the bar to its side or its outer end. */
const roundTo = (from: number, to: number, end: number): readonly Box[] => [
  [
    [-3, 3, -0.75],
    [to, 6, 0.75],
  ],
  [
    [from, end, -0.75],
    [to, 6, 0.75],
  ],
];

function bar(name: string, about: string, more: Partial<FlowCase>): FlowCase {
  const room: Box = [
    [0, -1.5, -1.5],
    [25.125, 1.5, 1.5],
  ];
  return {
    name,
    about,
    cell: 0.375,
    cavity: (...at) => isIn(room, at),
    feed: [straight],
    gate: [3, 1.5],
    bounds: [
      [-3, -1.5, -1.5],
      [28.5, 6, 1.5],
    ],
    pieces: thirds(25.125),
    endS: 0.15,
    ...more,
  };
}

/** Three pieces along x. */
const thirds = (length: number): FlowCase['pieces'] => ({
  inner: (x) => x < length / 3,
  middle: (x) => x > length / 3 && x < (2 * length) / 3,
  outer: (x) => x > (2 * length) / 3,
});

/** A body that widens outward, with two blind legs on its base; the stream comes down on the side of one of them. */
function cone(name: string, radius: number, cell: number, endS: number): FlowCase {
  const base = 8;
  // A middle on the wall is out on either side.
  const tie = 1e-6;
  // The longest that is a whole number of cells of 0.4 and of 0.3 mm.
  const end = 16.8;
  return {
    name,
    about: `a cone with two blind legs ${2 * radius} mm across outward, the stream on the side of one`,
    cell,
    cavity: (x, y, z) =>
      x > 0 &&
      (x < base
        ? Math.hypot(y, z) < 2.5 + 0.2 * x - tie
        : x < end && Math.hypot(Math.abs(y) - 2.6, z) < radius - tie),
    feed: [
      [
        [-8 * cell, -6 * cell, -2 * cell],
        [0, 2 * cell, 2 * cell],
      ],
    ],
    gate: [8 * cell, 4 * cell],
    bounds: [
      [-8 * cell, -4.8, -4.8],
      [end, 4.8, 4.8],
    ],
    pieces: {
      'leg at the gate': (x, y) => x > base && y < 0,
      'far leg': (x, y) => x > base && y > 0,
      'far tip': (x, y) => x > end - 2 && y > 0,
      body: (x) => x < base,
    },
    endS,
  };
}

/** The stalk enters in the notch between two lobes that reach inward of it. */
const leaf: FlowCase = {
  name: 'leaf-plate',
  about: 'a plate of 1.5 mm as a heart-shaped leaf, its stalk the gate, two lobes inward of it',
  cell: 0.375,
  cavity: (x, y, z) =>
    Math.abs(z) < 0.75 &&
    (((x - 12) / 9) ** 2 + (y / 6) ** 2 < 1 || (x - 4) ** 2 + (Math.abs(y) - 4) ** 2 < 14) &&
    !(x < 6 && Math.abs(y) < 1.5 + 0.2 * (6 - x)),
  feed: [
    [
      [-3, -1.5, -0.75],
      [6, 1.5, 0.75],
    ],
  ],
  gate: [3, 1.5],
  bounds: [
    [-3, -7.875, -0.75],
    [21, 7.875, 0.75],
  ],
  pieces: { lobes: (x) => x < 6, middle: (x) => x > 6 && x < 13.5, tip: (x) => x > 13.5 },
  endS: 0.2,
};

const bars: readonly FlowCase[] = [
  bar('bar-inner', 'a bar of 25 x 3 x 3 mm gated at its inner end', {}),
  bar('bar-inner-coarser', 'the same in coarser cells', { cell: 0.75 }),
  bar('bar-outer', 'a bar gated at its outer end, by a runner beside it', {
    feed: [
      ...roundTo(25.125, 28.125, 3),
      [
        [25.125, -1.5, -0.75],
        [28.125, 3, 0.75],
      ],
    ],
  }),
  bar('bar-side', 'a bar gated at the middle of its side, by a runner beside it', {
    feed: roundTo(11.25, 14.25, 1.5),
    gate: [3, 1.5],
  }),
  bar('bar-outer-vented', 'gated at its outer end, a vent at its inner end', {
    feed: [
      ...roundTo(25.125, 28.125, 3),
      [
        [25.125, -1.5, -0.75],
        [28.125, 3, 0.75],
      ],
    ],
    vent: [
      [0, -0.75, -0.375],
      [0.375, 0.75, 0.375],
    ],
  }),
];

/** A master of the demo as it was sculpted, its tip outward. */
function insideMaster(name: string, cell: number): Inside {
  const file = `${name}.stl`;
  const bytes = readFileSync(new URL(`../../../presets/hedgerow/masters/${file}`, import.meta.url));
  const read = readMesh(bytes, file);
  if (!('mesh' in read)) throw new Error(`${file} cannot be read`);
  const mesh = { ...read.mesh, positions: Float32Array.from(read.mesh.positions) };
  const cells = cut(mesh, cell);
  return (...at) => cellAt(cells, at) !== wall;
}

const ivyLeaf = (): FlowCase => ({
  name: 'ivy-leaf',
  about: 'the ivy leaf of the demo, gated at the end of its stalk, no vents',
  cell: 0.4,
  cavity: insideMaster('ivy-leaf', 0.4),
  feed: [
    [
      [-16, 3.2, 1.6],
      [-12, 4.8, 3.2],
    ],
  ],
  gate: [1.6, 1.6],
  bounds: [
    [-16, -12, 0],
    [18.4, 12, 6],
  ],
  pieces: {
    stalk: (x) => x < -7,
    'inner lobes': (x) => x > -7 && x < 0,
    middle: (x) => x > 0 && x < 8,
    tip: (x) => x > 8,
  },
  endS: 0.24,
});

/** Masters are read when they are asked for. */
export const flowCases = (): readonly FlowCase[] => [
  ...bars,
  cone('cone-two-legs', 1.4, 0.4, 0.18),
  cone('cone-thin-legs', 0.9, 0.3, 0.12),
  leaf,
  ivyLeaf(),
];
