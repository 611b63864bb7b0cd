import { describe, expect, it } from 'vitest';
import { measureMesh } from '../../src/mesh/index.ts';
import { withLand } from '../../src/mold/channel-ways/land.ts';
import {
  type Channel,
  channelLump,
  channelMesh,
  channelVolume,
  flatPartingSurface,
  type PartingSurface,
} from '../../src/mold/index.ts';
import { straightChannel } from '../straight-channel.ts';

const gate = straightChannel({
  id: 'gate-1',
  kind: 'gate',
  placement: 'seed-1',
  from: [10, 5],
  to: [34, 37],
  width: 4,
  depth: 1.5,
  half: 'lower',
});
/** Of the half ellipse 8 chords leave the 16-gon's share. */
const gateArea = ((Math.PI * 4 * 1.5) / 4) * ((16 / (2 * Math.PI)) * Math.sin((2 * Math.PI) / 16));
const ventArea = (3 - 0.5 * Math.tan(Math.PI / 9)) * 0.5;

/** A parting surface that rises by a tenth of the way along x. */
const slope: PartingSurface = {
  ...flatPartingSurface(60),
  flat: false,
  cell: 0.5,
  x0: -80,
  y0: -80,
  nx: 321,
  ny: 321,
  heights: Float32Array.from({ length: 321 * 321 }, (_, at) => 0.1 * (-80 + 0.5 * (at % 321))),
};

const measured = (channel: Channel, surface: PartingSurface, past = 0) => {
  const mesh = channelMesh(channel, surface, past);
  if (!mesh) throw new Error('no mesh');
  return measureMesh(mesh);
};

describe('a channel as it is cut', () => {
  it.each([
    ['lower', -1.5, 0],
    ['upper', 0, 1.5],
  ] as const)(
    'of half an ellipse in the %s half, from z %d to %d: area by length',
    (half, lowest, highest) => {
      const { volume, bounds } = measured({ ...gate, half }, flatPartingSurface(60));
      expect(volume).toBeCloseTo(gateArea * 40, 3);
      expect(bounds.min[2]).toBeCloseTo(lowest, 6);
      expect(bounds.max[2]).toBeCloseTo(highest, 6);
    },
  );

  it('of a vent: a trapezoid', () => {
    const vent = straightChannel({
      id: 'vent-1',
      kind: 'vent',
      placement: 'seed-1',
      from: [10, 5],
      to: [34, 37],
      width: 3,
      depth: 0.5,
      half: 'lower',
    });
    expect(measured(vent, flatPartingSurface(60)).volume).toBeCloseTo(ventArea * 40, 3);
  });

  it('stands out of the surface by what a cutter wants: its width by that by its length', () => {
    const more =
      measured(gate, flatPartingSurface(60), 1).volume - measured(gate, flatPartingSurface(60)).volume;
    expect(more).toBeCloseTo(4 * 1 * 40, 3);
  });

  // Shearing upward keeps a volume (Cavalieri): a slope takes nothing from it.
  it('follows a slope at its full depth', () => {
    const { volume, bounds } = measured(gate, slope);
    expect(volume).toBeCloseTo(gateArea * 40, 2);
    // Highest at its far end on the right: x 34 + 4/2 * 0.8.
    expect(bounds.max[2]).toBeCloseTo(0.1 * (34 + 1.6), 4);
  });

  const station = (x: number, y: number, width = 4, depth = 1.5) => ({ at: [x, y] as const, width, depth });

  // A mitred bend takes on its outer side what it lacks on its inner one: area by the way of the middle (Pappus).
  it.each([
    ['half-round', { kind: 'half-round' }, gateArea],
    ['V', { kind: 'V' }, 3],
    [
      'trapezoid of 15 degrees',
      { kind: 'trapezoid', draftRad: Math.PI / 12 },
      6 - 2.25 * Math.tan(Math.PI / 12),
    ],
  ] as const)('bends without a change of volume: %s', (_name, section, area) => {
    const run = [station(10, 0), station(20, 0), station(26, 8), station(26, 20)];
    for (const surface of [flatPartingSurface(60), slope])
      expect(measured({ ...gate, section, run }, surface).volume).toBeCloseTo(area * (10 + 10 + 12), 1);
    const channel = { ...gate, section, run, laps: [3, 2] as const };
    const exact = section.kind === 'half-round' ? (Math.PI * 4 * 1.5) / 4 : area;
    expect(channelVolume(channel)).toBeCloseTo(exact * (32 - 5), 9);
  });

  // Width and depth that grow evenly: a frustum, L (A0 + sqrt(A0 A1) + A1) / 3 of similar sections.
  it('widens evenly from its beginning to its end', () => {
    const run = [station(0, 0, 2, 1), station(30, 0, 4, 2)];
    const [small, large] = [2, 8].map((product) => (Math.PI / 4) * product);
    const frustum = (30 * (small + Math.sqrt(small * large) + large)) / 3;
    expect(channelVolume({ ...gate, run, laps: [0, 0] })).toBeCloseTo(frustum, 9);
    const drawn = (16 / (2 * Math.PI)) * Math.sin((2 * Math.PI) / 16);
    expect(measured({ ...gate, run }, flatPartingSurface(60)).volume).toBeCloseTo(frustum * drawn, 3);
    const { x, z } = channelLump({ ...gate, run, laps: [0, 0] }, flatPartingSurface(60));
    expect([x, z]).toEqual([15, expect.closeTo((-4 * 1.5) / (3 * Math.PI), 9)]);
  });

  // 30 mm of half ellipse 4 x 1.5, narrowed at 45 degrees within 1 mm, then 3 mm of half ellipse 2 x 1 up to the cavity.
  it('of a gate with a land: the frustum between and the narrow piece', () => {
    const run = [station(0, 0), station(36, 0)];
    const one = withLand({ ...gate, run, laps: [0, 2] }, { length: 4, width: 2, depth: 1.5 });
    const area = (width: number) => (Math.PI / 4) * width * 1.5;
    expect(channelVolume(one)).toBeCloseTo(area(4) * 30 + (area(4) + area(2)) / 2 + area(2) * 3, 9);
    expect(measured(one, flatPartingSurface(60)).bounds.max[0]).toBe(36);
  });

  it('without a length is none', () => {
    expect(channelMesh({ ...gate, run: [gate.run[0], gate.run[0]] }, slope, 0)).toBeUndefined();
  });
});
