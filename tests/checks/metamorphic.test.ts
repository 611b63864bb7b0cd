import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverOfCavities } from '../../src/checks/cover/cover.ts';
import { coverOfFixtures } from '../../src/checks/cover/cover-fixtures.ts';
import { leastCover } from '../../src/checks/cover/cover-least.ts';
import { wallsBetweenCavities } from '../../src/checks/walls/walls.ts';
import { wallsToBosses } from '../../src/checks/walls/walls-bosses.ts';
import { wallsToChannels } from '../../src/checks/walls/walls-channels.ts';
import { wallsField } from '../../src/checks/walls/walls-field.ts';
import { wallsToRim } from '../../src/checks/walls/walls-rim.ts';
import { wallsToTabs } from '../../src/checks/walls/walls-tabs.ts';
import { wallsToWell } from '../../src/checks/walls/walls-well.ts';
import {
  compose,
  type Matrix4,
  rotation,
  scaling,
  type TriangleMesh,
  translation,
} from '../../src/geometry/index.ts';
import type { Boss, Channel, Mold, Sprue } from '../../src/mold/index.ts';
import { ball, box, single } from '../revolved-solids.ts';
import { straightChannel } from '../straight-channel.ts';
import { emptyMold, nutAt, runCheck, smallSprue, withMaster } from './small-mold.ts';

/** Domes and fillets are drawn to this chord error whatever their size, mm: they alone do not grow quite in step. */
const chordError = 0.02;

const looked = [
  coverOfCavities,
  coverOfFixtures,
  wallsBetweenCavities,
  wallsToBosses,
  wallsToWell,
  wallsToChannels,
  wallsToTabs,
  wallsToRim,
];

/** Lopsided in all directions, so that nothing is the same when it is turned or mirrored. */
const wedge: TriangleMesh = {
  positions: Float32Array.from([0, 0, 0, 9, 0, 0, 0, 5, 0, 1, 1, 4]),
  triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3]),
};
const shapes: readonly TriangleMesh[] = [
  wedge,
  single(box([-4, -3, -2], [4, 3, 2])),
  single(ball(4, [0, 0, 0], 12, 24)),
];

interface Layout {
  readonly shapes: readonly TriangleMesh[];
  readonly matrices: readonly Matrix4[];
  readonly bosses: readonly Boss[];
  readonly channels: readonly Channel[];
  readonly notchRad: number;
  readonly tabRad: number;
  readonly sprue: Sprue;
  /** All lengths of the disc and its limits are this many times the usual ones. */
  readonly size: number;
}

function moldOf({ shapes: meshes, matrices, bosses, channels, notchRad, tabRad, sprue, size }: Layout): Mold {
  const { disc, limits } = emptyMold;
  const { falseSeat, mismatch, undercutShare, slenderness, ...lengths } = limits;
  const grown = Object.fromEntries(Object.entries(lengths).map(([key, value]) => [key, value * size]));
  const bare: Mold = {
    ...emptyMold,
    disc: { ...disc, radius: disc.radius * size, lower: disc.lower * size, upper: disc.upper * size },
    limits: { ...limits, ...grown },
    bosses,
    channels,
    sprue,
    tabs: [
      {
        id: 'tab-1',
        angleRad: tabRad,
        width: 12 * size,
        length: 8 * size,
        height: 3 * size,
        inset: size,
      },
    ],
    notches: [{ id: 'notch-1', angleRad: notchRad, width: 6 * size, depth: 4 * size }],
  };
  return matrices.reduce(
    (mold, matrix, i) => withMaster(mold, `m${i}`, meshes[i % meshes.length], matrix),
    bare,
  );
}

const gate = straightChannel({
  id: 'gate-1',
  kind: 'gate',
  placement: 'm0-1',
  from: [12, 5],
  to: [60, 20],
  width: 3,
  depth: 1.5,
  half: 'upper',
});

/** Five placements round the axis, each turned about all axes. */
const layouts = fc
  .array(
    fc.tuple(fc.integer({ min: 38, max: 95 }), ...[0, 1, 2].map(() => fc.integer({ min: 0, max: 62 }))),
    {
      minLength: 5,
      maxLength: 5,
    },
  )
  .map(
    (places): Layout => ({
      shapes,
      matrices: places.map(([radius, a, b, c], i) =>
        compose(
          rotation('z', i * 1.2),
          translation(radius, 0, (a % 5) - 2),
          rotation('x', a / 10),
          rotation('y', b / 10),
          rotation('z', c / 10),
        ),
      ),
      bosses: [nutAt('one', 105, 0), nutAt('two', -60, 85)],
      channels: [gate],
      notchRad: 0.6,
      tabRad: 2.6,
      sprue: smallSprue,
      size: 1,
    }),
  );

const turnPoint = ([x, y]: readonly [number, number], by: number): [number, number] => [
  x * Math.cos(by) - y * Math.sin(by),
  x * Math.sin(by) + y * Math.cos(by),
];

function turned(layout: Layout, by: number): Layout {
  return {
    ...layout,
    matrices: layout.matrices.map((matrix) => compose(rotation('z', by), matrix)),
    bosses: layout.bosses.map((boss) => {
      const [x, y] = turnPoint([boss.x, boss.y], by);
      return { ...boss, x, y, turnRad: boss.turnRad + by };
    }),
    channels: layout.channels.map((one) => ({
      ...one,
      run: one.run.map((station) => ({ ...station, at: turnPoint(station.at, by) })),
    })),
    notchRad: layout.notchRad + by,
    tabRad: layout.tabRad + by,
  };
}

/** Mirrored in the plane y = 0: the meshes in their own frame, and each matrix between two mirrors. */
function mirrored(layout: Layout): Layout {
  const flip = scaling(1, -1, 1);
  return {
    ...layout,
    shapes: layout.shapes.map(({ positions, triangles }) => ({
      positions: positions.map((value, i) => (i % 3 === 1 ? -value : value)),
      triangles: triangles.slice().reverse(),
    })),
    matrices: layout.matrices.map((matrix) => compose(flip, matrix, flip)),
    bosses: layout.bosses.map((boss) => ({ ...boss, y: -boss.y, turnRad: -boss.turnRad })),
    channels: layout.channels.map((one) => ({
      ...one,
      run: one.run.map((station) => ({ ...station, at: [station.at[0], -station.at[1]] as const })),
    })),
    notchRad: -layout.notchRad,
    tabRad: -layout.tabRad,
  };
}

function scaled(layout: Layout, by: number): Layout {
  const lengths = <T extends object>(thing: T, keep: readonly string[]): T =>
    Object.fromEntries(
      Object.entries(thing).map(([key, value]) => [
        key,
        typeof value === 'number' && !keep.includes(key) ? value * by : value,
      ]),
    ) as T;
  return {
    ...layout,
    size: layout.size * by,
    matrices: layout.matrices.map((matrix) => compose(scaling(by), matrix)),
    bosses: layout.bosses.map((boss) => lengths(boss, ['turnRad'])),
    channels: layout.channels.map((one) => ({
      ...one,
      run: one.run.map(({ at, ...station }) => ({
        ...lengths(station, []),
        at: [at[0] * by, at[1] * by] as const,
      })),
      laps: [one.laps[0] * by, one.laps[1] * by] as const,
    })),
    sprue: lengths(layout.sprue, ['draftRad']),
  };
}

/** Each face cut in four through the middles of its edges: the same surface. */
function refined({ positions, triangles }: TriangleMesh): TriangleMesh {
  const points = [...positions];
  const middles = new Map<string, number>();
  const middle = (a: number, b: number): number => {
    const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
    const known = middles.get(key);
    if (known !== undefined) return known;
    const at = points.length / 3;
    for (let axis = 0; axis < 3; axis++) points.push((points[3 * a + axis] + points[3 * b + axis]) / 2);
    middles.set(key, at);
    return at;
  };
  const faces: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]];
    const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)];
    faces.push(a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca);
  }
  return { positions: Float32Array.from(points), triangles: Uint32Array.from(faces) };
}

/** Every figure of walls and cover by name and subject; a pair is the same whichever of the two stands first. */
async function figuresOf(layout: Layout): Promise<Map<string, number>> {
  const mold = moldOf(layout);
  const found = new Map<string, number>();
  for (const check of looked) {
    for (const { name, subject, value } of (await runCheck(check, mold)).figures) {
      found.set(`${name} ${subject.split(' ').sort().join(' ')}`, value);
    }
  }
  for (const { name, subject, value } of (await runCheck(leastCover, mold)).figures) {
    if (!name.startsWith('cover.stock')) found.set(`${name} ${subject}`, value);
  }
  return found;
}

/** Which of the farther pairs are measured hangs on bounds, and may differ; all that both have agree, least of all too. */
async function sameFigures(a: Layout, b: Layout, factor: number, within: number): Promise<void> {
  const [one, other] = [await figuresOf(a), await figuresOf(b)];
  const both = [...one.keys()].filter((key) => other.has(key));
  expect(both.length).toBeGreaterThan(0.7 * Math.max(one.size, other.size));
  for (const key of both) {
    expect(Math.abs((other.get(key) ?? 0) - factor * (one.get(key) ?? 0)), key).toBeLessThan(within);
  }
  for (const name of [
    'walls.least',
    'walls.boss',
    'walls.well',
    'walls.channel',
    'walls.tab',
    'cover.lower',
  ]) {
    const least = (figures: Map<string, number>) =>
      Math.min(...[...figures].filter(([key]) => key.startsWith(`${name} `)).map(([, value]) => value));
    expect(Number.isFinite(least(one)), name).toBe(true);
    expect(Math.abs(least(other) - factor * least(one)), name).toBeLessThan(within);
  }
}

const holds = (property: (layout: Layout) => Promise<void>): Promise<void> =>
  fc.assert(fc.asyncProperty(layouts, property), { numRuns: 6, seed: 20260711, endOnFailure: true });

describe('walls and cover', () => {
  // Rounds are drawn with 48 sides: turned by whole sides, the polygons too are the same.
  it('do not change when everything is turned about the axis', () =>
    holds((layout) => sameFigures(layout, turned(layout, (11 * 2 * Math.PI) / 48), 1, 2e-4)));

  it('do not change when everything is mirrored', () =>
    holds((layout) => sameFigures(layout, mirrored(layout), 1, 2e-4)));

  it('grow as everything grows', () =>
    holds((layout) => sameFigures(layout, scaled(layout, 1.7), 1.7, 2e-4 + 2 * chordError * 1.7)));

  it('do not change when the faces of the masters are cut in four', () =>
    holds((layout) => sameFigures(layout, { ...layout, shapes: layout.shapes.map(refined) }, 1, 2e-4)));

  it('do not change with the order of placements, bosses and channels', () =>
    holds(async (layout) => {
      const mold = moldOf(layout);
      const back: Mold = {
        ...mold,
        placements: [...mold.placements].reverse(),
        bosses: [...mold.bosses].reverse(),
        masters: [...mold.masters].reverse(),
      };
      for (const check of looked) {
        const values = async (one: Mold): Promise<string[]> =>
          (await runCheck(check, one)).figures
            .map(
              ({ name, subject, value }) =>
                `${name} ${subject.split(' ').sort().join(' ')} ${value.toFixed(6)}`,
            )
            .sort();
        expect(await values(back)).toEqual(await values(mold));
      }
    }));
});

describe('thickness of the walls', () => {
  const thicknesses = async (layout: Layout) =>
    (await runCheck(wallsField, moldOf(layout))).fields.map(({ values }) => values);

  it('of every vertex follows when all is turned, mirrored or grown, and stays when faces are cut', () =>
    holds(async (layout) => {
      const plain = await thicknesses(layout);
      const cut = { ...layout, shapes: layout.shapes.map(refined) };
      for (const [other, factor, within] of [
        [turned(layout, (5 * 2 * Math.PI) / 48), 1, 2e-4],
        [mirrored(layout), 1, 2e-4],
        [scaled(layout, 1.7), 1.7, 2e-4 + 2 * chordError * 1.7],
        [cut, 1, 2e-4],
      ] as const) {
        const found = await thicknesses(other);
        expect(found).toHaveLength(plain.length);
        for (const [i, values] of plain.entries()) {
          for (const [v, value] of values.entries()) {
            expect(Math.abs(found[i][v] - factor * value)).toBeLessThan(within);
          }
        }
      }
    }));
});
