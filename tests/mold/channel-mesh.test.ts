import { describe, expect, it } from 'vitest';
import { measureMesh } from '../../src/mesh/index.ts';
import { type Channel, channelMesh, flatPartingSurface, type PartingSurface } from '../../src/mold/index.ts';

const gate: Channel = {
  id: 'gate-1',
  kind: 'gate',
  placement: 'seed-1',
  from: [10, 5],
  to: [34, 37],
  width: 4,
  depth: 1.5,
  half: 'lower',
};
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
    const vent = { ...gate, kind: 'vent', width: 3, depth: 0.5 } as const;
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

  it('without a length is none', () => {
    expect(channelMesh({ ...gate, to: gate.from }, slope, 0)).toBeUndefined();
  });
});
