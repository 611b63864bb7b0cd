import { describe, expect, it } from 'vitest';
import { channelsWebs } from '../../../src/checks/walls/index.ts';
import type { Point2 } from '../../../src/geometry/index.ts';
import type { Channel } from '../../../src/mold/index.ts';
import { straightChannel } from '../../straight-channel.ts';
import { emptyMold, runCheck } from '../small-mold.ts';

/** A gate 3 mm wide from one point to another; its ends, half as long, lie in the well and in the cavity. */
const gate = (
  placement: string,
  from: Point2,
  to: Point2,
  other: Partial<Parameters<typeof straightChannel>[0]> & Partial<Channel> = {},
): Channel => ({
  ...straightChannel({
    id: `gate-${placement}`,
    kind: 'gate',
    placement,
    from,
    to,
    width: 3,
    depth: 1.5,
    half: 'upper',
    ...other,
  }),
});
const along = (placement: string, y: number, other: Parameters<typeof gate>[3] = {}): Channel =>
  gate(placement, [15, y], [60, y], other);

const websOf = async (...channels: Channel[]) =>
  (await runCheck(channelsWebs, { ...emptyMold, channels })).findings;
const widths = async (...channels: Channel[]) =>
  (await websOf(...channels)).map(({ values }) => Number(values.measured));

describe('the web between two gates side by side', () => {
  it('is what is left between their edges, and told at its middle with both', async () => {
    const [web, ...more] = await websOf(along('a', 0), along('b', 3.6));
    expect(more).toEqual([]);
    expect(web).toMatchObject({
      code: 'channels.web',
      severity: 'warn',
      subject: 'gate-a',
      place: [expect.any(Number), expect.closeTo(1.8, 9), 0],
      values: {
        measured: expect.closeTo(0.6, 9),
        limit: 1,
        kind: 'gate',
        placement: 'a',
        other: 'b',
        otherKind: 'gate',
      },
    });
    // Where both are cut, not where they lie in the well or in their cavities.
    expect(web.place?.[0]).toBeGreaterThanOrEqual(16.5);
    expect(web.place?.[0]).toBeLessThanOrEqual(58.5);
  });

  it('may be as thin as the plan allows: 1 mm, and the plan can ask for more', async () => {
    expect(await widths(along('a', 0), along('b', 4))).toEqual([]);
    expect(await widths(along('a', 0), along('b', 3.999))).toEqual([expect.closeTo(0.999, 9)]);
    const wider = { ...emptyMold, limits: { ...emptyMold.limits, web: 1.5 } };
    const { findings } = await runCheck(channelsWebs, { ...wider, channels: [along('a', 0), along('b', 4)] });
    expect(findings.map(({ values }) => [values.measured, values.limit])).toEqual([[1, 1.5]]);
  });

  // Radii at 15 degrees: their inner edges begin 1.5 mm aside of each, where both leave the well.
  it('of two that leave the well at an angle is thinnest at its edge', async () => {
    const half = (7.5 * Math.PI) / 180;
    const at = (radius: number, side: number): Point2 => [
      radius * Math.cos(half),
      side * radius * Math.sin(half),
    ];
    const radial = (placement: string, side: number) => gate(placement, at(13.5, side), at(60, side));
    const [web] = await websOf(radial('a', -1), radial('b', 1));
    expect(web.values.measured).toBeCloseTo(2 * (15 * Math.sin(half) - 1.5 * Math.cos(half)), 9);
    expect(web.place?.[0]).toBeCloseTo(15 * Math.cos(half) + 1.5 * Math.sin(half), 9);
    expect(web.place?.[1]).toBeCloseTo(0, 9);
  });

  it('is looked for between every two: three side by side have two, each told of its own pair', async () => {
    const found = await websOf(along('a', 0), along('b', 3.5), along('c', 7.25));
    expect(found.map(({ subject, values }) => [subject, values.other, values.measured])).toEqual([
      ['gate-a', 'b', expect.closeTo(0.5, 9)],
      ['gate-b', 'c', expect.closeTo(0.75, 9)],
    ]);
  });

  // Corner to corner over a step of 0.3 along and 0.4 aside: 0.5 mm (3, 4, 5); 0.6 and 0.8: 1 mm.
  it('is the true distance where one ends before the other begins, on any side of it', async () => {
    const one = gate('a', [-1.5, 0], [21.5, 0]);
    const beyond = (dx: number, dy: number, [sx, sy]: Point2) =>
      gate('b', [sx * (20 + dx - 1.5) + (sx < 0 ? 20 : 0), sy * (3 + dy)], [sx * 60, sy * (3 + dy)]);
    for (const side of [
      [1, 1],
      [1, -1],
      [-1, 1],
      [-1, -1],
    ] as const) {
      expect(await widths(one, beyond(0.3, 0.4, side)), `${side}`).toEqual([expect.closeTo(0.5, 9)]);
      expect(await widths(beyond(0.3, 0.4, side), one), `${side}`).toEqual([expect.closeTo(0.5, 9)]);
      expect(await widths(one, beyond(0.62, 0.8, side)), `${side}`).toEqual([]);
    }
  });
});

describe('no web is told', () => {
  it('of a vent, which carries no metal, nor of one gate alone', async () => {
    const vent = along('b', 3.5, { id: 'vent-b', kind: 'vent' });
    expect(await websOf(along('a', 0), vent)).toEqual([]);
    expect(await widths(along('a', 0), vent, along('c', -3.5))).toEqual([expect.closeTo(0.5, 9)]);
    expect(channelsWebs.units({ ...emptyMold, channels: [along('a', 0), vent] })).toEqual([]);
    expect(channelsWebs.units({ ...emptyMold, channels: [along('a', 0), along('b', 3.5)] })).toHaveLength(1);
  });

  it('of what runs out of the other as the plan says, whichever is named first', async () => {
    const runner = along('a', 0, { id: 'runner', kind: 'runner' });
    const branch = along('b', 3.5, { opensInto: 'runner' });
    expect(await websOf(runner, branch)).toEqual([]);
    expect(await websOf(branch, runner)).toEqual([]);
    expect(await websOf(runner, along('b', 3.5, { opensInto: 'another' }))).toMatchObject([
      { subject: 'runner', values: { kind: 'runner', otherKind: 'gate' } },
    ]);
  });

  it('of what runs together: side by side, across, or one within the other', async () => {
    expect(await websOf(along('a', 0), along('b', 3))).toEqual([]);
    expect(await websOf(along('a', 0), gate('b', [40, -20], [40, 20]))).toEqual([]);
    // 0.7 mm from edge to edge, but the narrow one lies in the second leg of the wide one.
    const bent = {
      ...gate('a', [0, 0], [40, 0], { width: 10 }),
      run: (
        [
          [0, 0],
          [40, 0],
          [40, 60],
        ] as const
      ).map((at) => ({ at, width: 10, depth: 3 })),
    };
    const within = gate('b', [40, 20], [40, 40], { width: 8.6 });
    expect(await websOf(bent, within)).toEqual([]);
    expect(await websOf(within, bent)).toEqual([]);
    // Beside that leg there is one again: 45 to 45.4.
    expect(await widths(bent, gate('b', [46.9, 20], [46.9, 40]))).toEqual([expect.closeTo(0.4, 9)]);
  });

  it('of one with no width, or so short that it lies within well and cavity', async () => {
    const none = { ...along('b', 3.5), run: along('b', 3.5).run.map((one) => ({ ...one, width: 0 })) };
    expect(channelsWebs.units({ ...emptyMold, channels: [along('a', 0), none] })).toEqual([]);
    expect(await websOf(along('a', 0), gate('b', [30, 3.5], [32.9, 3.5]))).toEqual([]);
    expect(await websOf(along('a', 0), gate('b', [30, 3.5], [33.1, 3.5]))).toHaveLength(1);
  });
});
