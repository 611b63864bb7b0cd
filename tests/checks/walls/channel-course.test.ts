import { describe, expect, it } from 'vitest';
import {
  channelCourse,
  channelsApart,
  channelsOpen,
  channelsOverBuildUps,
} from '../../../src/checks/walls/index.ts';
import { type Bounds2, clipped, type Point2, sidesApart, translation } from '../../../src/geometry/index.ts';
import { type Channel, flatPartingSurface, type Mold, type PartingSurface } from '../../../src/mold/index.ts';
import { asMesh, box } from '../../mesh/rough-shapes.ts';
import { straightChannel } from '../../straight-channel.ts';
import { emptyMold, nutAt, runCheck, smallSprue, withMaster } from '../small-mold.ts';

/** Along +x from the well to 60 mm, 3 mm wide. */
const straight = {
  id: 'gate-a',
  kind: 'gate',
  placement: 'a',
  from: [15, 0],
  to: [60, 0],
  width: 3,
  depth: 1.5,
  half: 'upper',
} as const;
const gate = straightChannel(straight);
const vent = straightChannel({
  ...straight,
  id: 'vent-a',
  kind: 'vent',
  from: [80, 0],
  to: [126, 0],
  width: 1,
});
const tab = { id: 'tab-1', angleRad: 0, width: 10, length: 8, height: 3, inset: 1 };
const holding = (other: Partial<Mold>): Mold => ({
  ...emptyMold,
  sprue: smallSprue,
  channels: [gate, vent],
  ...other,
});
const said = async (mold: Mold) =>
  (await runCheck(channelCourse, mold)).findings.map(({ code, severity, subject, values }) => ({
    code,
    severity,
    subject,
    measured: values.measured,
  }));

describe('gates and vents past bosses, tabs, notches and bolts', () => {
  // M8 by DIN 1587: 13 mm across flats, so 15.01 mm across corners; the round through these counts.
  const corners = 13 / Math.sqrt(3);
  it('a nut on the path: its whole width along it', async () => {
    expect(await said(holding({ bosses: [nutAt('nut', 40, 0)] }))).toEqual([
      {
        code: 'channels.through',
        severity: 'stop',
        subject: 'gate-a',
        measured: expect.closeTo(2 * corners, 1),
      },
    ]);
  });
  it('a nut 8 mm aside: the chord at the channel edge', async () => {
    // Seen from the nut the nearer edge runs 8 - 1.5 mm from its middle.
    const chord = 2 * Math.sqrt(corners ** 2 - 6.5 ** 2);
    const [found] = await said(holding({ bosses: [nutAt('nut', 40, 8)] }));
    expect(found).toMatchObject({ code: 'channels.through', measured: expect.closeTo(chord, 1) });
  });
  it.each([
    [11, 1],
    [corners + 1.5 + 3.01, 0],
  ])('a nut %d mm aside: %d walls too thin', async (aside, count) => {
    const found = await said(holding({ bosses: [nutAt('nut', 40, aside)] }));
    const wall = aside - 1.5 - corners;
    expect(found).toEqual(
      Array(count).fill({
        code: 'channels.near',
        severity: 'warn',
        subject: 'gate-a',
        measured: expect.closeTo(wall, 2),
      }),
    );
  });
  it('a vent through the tab at its end is a warning; it carries no metal and needs no wall', async () => {
    expect(await said(holding({ tabs: [tab] }))).toEqual([
      { code: 'channels.through', severity: 'warn', subject: 'vent-a', measured: expect.closeTo(8, 6) },
    ]);
    // 10 mm wide and 1 mm of vent: at 4 degrees of 124 mm they are 8.65 - 5.5 mm apart.
    expect(await said(holding({ tabs: [{ ...tab, angleRad: (4 * Math.PI) / 180 }] }))).toEqual([]);
  });
  it('a gate through a deep tab or notch leads metal to the rim', async () => {
    const deep = { ...tab, length: 80 };
    const [ofTab] = (await said(holding({ tabs: [deep] }))).filter(({ subject }) => subject === 'gate-a');
    // Its face is where its corners are 1 mm inside the rim.
    const inner = Math.sqrt(124 ** 2 - 5 ** 2) - 80;
    expect(ofTab).toMatchObject({ code: 'channels.leads-out', severity: 'stop' });
    expect(ofTab.measured).toBeCloseTo(60 - inner, 6);
    const notches = [{ id: 'notch', angleRad: 0, width: 8, depth: 75 }];
    const [ofNotch] = await said(holding({ notches }));
    expect(ofNotch).toMatchObject({ code: 'channels.leads-out', measured: expect.closeTo(10, 2) });
  });
  it('a bolt that goes through the disc', async () => {
    const bolts = { size: 'M10', count: 1, circle: 200, startRad: 0 };
    const bench = { closing: { bolts } };
    expect(await said(holding({ bench }))).toEqual([
      { code: 'channels.through', severity: 'warn', subject: 'vent-a', measured: expect.closeTo(10, 1) },
    ]);
    expect(await said(holding({ bench, process: 'rigid' }))).toEqual([]);
  });
  it('is asked about what is dragged alone', () => {
    const units = channelCourse.units(holding({ bosses: [nutAt('nut', 40, 0)], tabs: [tab] }));
    expect(units.map(({ about }) => about)).toEqual([['nut'], ['tab-1']]);
    expect(channelCourse.follows).toBe(true);
  });
});

describe('channels of different cavities', () => {
  const along = (
    kind: 'gate' | 'vent',
    placement: string,
    degrees: number,
    other: Partial<Parameters<typeof straightChannel>[0]> = {},
  ) => {
    const at = (radius: number): Point2 => [
      radius * Math.cos((degrees * Math.PI) / 180),
      radius * Math.sin((degrees * Math.PI) / 180),
    ];
    const ends = kind === 'gate' ? { from: at(13), to: at(60) } : { from: at(80), to: at(126) };
    return straightChannel({ ...straight, id: `${kind}-${placement}`, kind, placement, ...ends, ...other });
  };
  const codes = async (channels: Channel[]) =>
    (await runCheck(channelsApart, holding({ channels }))).findings.map(({ code, values }) => [
      code,
      values.which,
    ]);
  it('gates run together within the well on purpose, beyond it not', async () => {
    // Strips of 3 mm at 16 degrees part at 1.5 / sin 8 = 10.8 mm, within the well of 15 mm; at 10 degrees at 17.2 mm.
    expect(await codes([along('gate', 'a', 0), along('gate', 'b', 16)])).toEqual([]);
    const { findings } = await runCheck(
      channelsApart,
      holding({ channels: [along('gate', 'a', 0), along('gate', 'b', 10)] }),
    );
    expect(findings).toMatchObject([{ code: 'channels.meet', subject: 'gate-a', values: { other: 'b' } }]);
    expect(findings[0].values.measured).toBeCloseTo(1.5 / Math.sin((5 * Math.PI) / 180) - 15, 6);
  });
  it('vents meet only where the plan means both to', async () => {
    const [one, other] = [along('vent', 'a', 0), along('vent', 'b', 1)];
    expect(await codes([one, other])).toEqual([['channels.meet', 'vents']]);
    expect(await codes([{ ...one, joins: true }, other])).toEqual([['channels.meet', 'vents']]);
    expect(
      await codes([
        { ...one, joins: true },
        { ...other, joins: true },
      ]),
    ).toEqual([]);
  });
  it('a gate that crosses a vent is told even across the halves; those of one cavity are not', async () => {
    const across = along('vent', 'b', 0, { from: [40, -20], to: [40, 126], half: 'lower' });
    expect(await codes([gate, across])).toEqual([['channels.meet', 'other']]);
    expect(await codes([gate, { ...across, placement: 'a' }])).toEqual([]);
  });
});

describe('build-ups of others', () => {
  /** A ridge along y at x = 40, 3 mm high and level over 6 mm, falling off within 2 mm. */
  function ridge(): PartingSurface {
    const cell = 0.5;
    const [nx, ny] = [201, 81];
    const heights = new Float32Array(nx * ny);
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++) {
        const away = Math.max(0, Math.abs(i * cell - 40) - 3);
        const aside = Math.max(0, Math.abs(j * cell - 20) - 5);
        heights[j * nx + i] = Math.max(0, 3 - 1.5 * Math.max(away, aside));
      }
    return { ...flatPartingSurface(125), flat: false, cell, x0: 0, y0: -20, nx, ny, heights };
  }
  const lying = (placement: string, y: number) => laid(placement, [10, y], [70, y]);
  const laid = async (placement: string, from: Point2, to: Point2, widths = [3, 3]) => {
    const body = asMesh(box([4, 8, 2], [-2, -4, 0]));
    const mold = withMaster({ ...emptyMold, parting: ridge() }, 'm', body, translation(40, 0, 3));
    const channel = straightChannel({ ...straight, placement, from, to });
    const run = channel.run.map((end, i) => ({ ...end, width: widths[i] }));
    return runCheck(channelsOverBuildUps, {
      ...mold,
      supports: [{ placement: 'm-1', clearance: 0.2 }],
      channels: [{ ...channel, run }],
    });
  };
  it('a gate over one is told with how far it runs over it, its own and one beside are not', async () => {
    const { findings } = await lying('other', 0);
    expect(findings).toMatchObject([
      { code: 'channels.build-up', subject: 'gate-a', values: { other: 'm-1' } },
    ]);
    // Level over 6 mm, 45 degrees or so at the ends until 0.3 mm are left: less than 10 mm in all.
    expect(findings[0].values.measured).toBeGreaterThan(6);
    expect(findings[0].values.measured).toBeLessThan(10.2);
    expect((await lying('m-1', 0)).findings).toEqual([]);
    expect((await lying('other', 15)).findings).toEqual([]);
  });
  const reach = async (from: Point2, to: Point2, widths?: number[]) =>
    (await laid('other', from, to, widths)).findings.map(({ values }) => Number(values.measured));
  it('one runs as far over it this way as that, and one that ends before it or begins after it not at all', async () => {
    const [there] = await reach([10, 0], [70, 0]);
    const [back] = await reach([70, 0], [10, 0]);
    expect(back).toBeCloseTo(there, 9);
    expect(await reach([10, 0], [30, 0])).toEqual([]);
    expect(await reach([50, 0], [70, 0])).toEqual([]);
    // Into the middle of it, from either side: together all of it.
    const [[left], [right]] = [await reach([10, 0], [40, 0]), await reach([40, 0], [70, 0])];
    expect(left + right).toBeGreaterThan(there - 1);
    expect(left + right).toBeLessThanOrEqual(there + 1e-9);
  });
  it('as wide as it is where they meet: it reaches half its width to either side, and widens evenly', async () => {
    // Where the narrowest still runs over it, and where none does: the edge, looked for in steps of 0.25 mm.
    const edge = async (widths: number[], side: 1 | -1) => {
      for (let y = 10; y > 0; y -= 0.25)
        if ((await reach([10, side * y], [70, side * y], widths)).length > 0) return y;
      return 0;
    };
    const sides = [1, -1] as const;
    for (const side of sides) {
      const narrow = await edge([1, 1], side);
      expect(Math.abs((await edge([5, 5], side)) - narrow - 2)).toBeLessThanOrEqual(0.5);
      // 1 mm wide at x = 10, 9 mm at x = 70: 5 mm in the middle, where the build-up is.
      const widening = await edge([1, 9], side);
      expect(Math.abs(widening - narrow - 2)).toBeLessThanOrEqual(1);
      expect(widening).toBeCloseTo(await edge([9, 1], side), 0);
    }
  });
});

describe('gates that open into their cavity', () => {
  /** A slab whose floor is at z, with a foot at its outer end that reaches through the plane. */
  const over = async (z: number, half: 'lower' | 'upper') => {
    const slab = asMesh(box([8, 8, 4], [-4, -4, z]));
    const foot = asMesh(box([2, 8, z + 3], [2, -4, -2]));
    const body = {
      positions: Float32Array.from([...slab.positions, ...foot.positions]),
      triangles: Uint32Array.from([
        ...slab.triangles,
        ...foot.triangles.map((corner) => corner + slab.positions.length / 3),
      ]),
    };
    const mold = withMaster(emptyMold, 'm', body, translation(60, 0, 0));
    const one = straightChannel({ ...straight, placement: 'm-1', from: [15, 0], to: [57.5, 0], half });
    const { findings } = await runCheck(channelsOpen, { ...mold, channels: [one] });
    return findings.map(({ code, subject }) => `${code} ${subject}`);
  };
  it('one under the floor of its cavity is told; one into its side, or over which it begins, is not', async () => {
    // The gate is 1.5 mm deep.
    expect(await over(1.45, 'upper')).toEqual(['channels.misses gate-a']);
    expect(await over(1.2, 'upper')).toEqual([]);
    expect(await over(-2, 'upper')).toEqual([]);
    expect(await over(0, 'lower')).toEqual([]);
    expect(await over(0.5, 'lower')).toEqual(['channels.misses gate-a']);
  });
});

describe('polygons', () => {
  const square = (x: number, y: number, side: number): Point2[] => [
    [x, y],
    [x + side, y],
    [x + side, y + side],
    [x, y + side],
  ];
  const boundsIn = (points: readonly Point2[]): Bounds2 => ({
    min: [Math.min(...points.map(([x]) => x)), Math.min(...points.map(([, y]) => y))],
    max: [Math.max(...points.map(([x]) => x)), Math.max(...points.map(([, y]) => y))],
  });
  it('what two squares share is a square; side by side they share nothing and are as far apart as drawn', () => {
    expect(boundsIn(clipped(square(0, 0, 4), square(3, 2, 4)))).toEqual({ min: [3, 2], max: [4, 4] });
    expect(clipped(square(0, 0, 4), square(4, 0, 4))).toEqual([]);
    // Corner to corner: 3, 4, 5.
    expect(sidesApart(square(0, 0, 1), square(4, 5, 1)).distance).toBeCloseTo(5, 12);
    expect(sidesApart(square(0, 0, 1), square(4, 5, 1)).middle).toEqual([2.5, 3]);
  });
});
