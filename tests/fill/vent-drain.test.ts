import { describe, expect, it } from 'vitest';
import { ventDrain } from '../../src/fill/index.ts';
import { conditionsOf } from '../../src/fill/of-mold.ts';
import type { Channel, Mold } from '../../src/mold/index.ts';
import { standardGravity } from '../../src/physics/index.ts';
import { emptyMold, runCheck, smallSprue } from '../checks/small-mold.ts';

/** A vent from 60 mm straight outward; the disc of the small molds has its rim where `far` says unless it ends blind. */
const vent = (width: number, depth: number, far: number, more: Partial<Channel> = {}): Channel => ({
  id: 'vent-part',
  kind: 'vent',
  placement: 'part',
  run: [60, far].map((x) => ({ at: [x, 0] as const, width, depth })),
  laps: [0, 0],
  section: { kind: 'half-round' },
  half: 'upper',
  ...more,
});

const bench: Mold['bench'] = {
  alloy: { name: 'tin', pourC: 300 },
  spin: { speedRpm: 480 },
  rubber: { conductivityWMK: 0.22, diffusivityM2S: 1.1e-7 },
};
const rim = 80;
const moldOf = (...channels: Channel[]): Mold => ({
  ...emptyMold,
  disc: { ...emptyMold.disc, radius: rim },
  sprue: smallSprue,
  channels,
  bench,
});

describe('a vent that lets metal out', () => {
  it('by hand: 0.61 of Torricelli, for as long as superheat lasts in half an ellipse', async () => {
    const mold = moldOf(vent(4, 2, rim));
    const { findings } = await runCheck(ventDrain, mold);
    expect(findings.map(({ code, subject }) => [code, subject])).toEqual([['fill.vent-drains', 'vent-part']]);
    // Liquid tin at 300 C: 6979 - 0.652 x 68.07 kg/m3, 250 J/kgK, 68.07 K over its liquidus, that 171.93 K over the mold.
    const effusivity = 0.22 / Math.sqrt(1.1e-7);
    const density = 6979 - 0.652 * 68.07;
    const modulus = (Math.PI * 2) / (4 + Math.PI * Math.hypot(4 / Math.SQRT2, 2 * Math.SQRT2) * 0.5);
    const hotS = (Math.PI / 4) * ((density * 250 * 68.07 * modulus * 1e-3) / (effusivity * 171.93)) ** 2;
    const omega = (480 * Math.PI) / 30;
    const speed = 0.61 * omega * Math.sqrt(60 ** 2 - smallSprue.wellRadius ** 2);
    expect(conditionsOf(mold)?.field).toEqual({ speedRpm: 480, gravity: standardGravity });
    const { measured, limit, depth } = findings[0].values as Record<string, number>;
    expect(limit).toBeCloseTo(20, 6);
    expect(measured / (speed * hotS)).toBeCloseTo(1, 3);
    // A hair deeper than told it still runs out, thinner it does not.
    expect((await runCheck(ventDrain, moldOf(vent(4, 1.01 * depth, rim)))).findings).toHaveLength(1);
    expect((await runCheck(ventDrain, moldOf(vent(4, 0.99 * depth, rim)))).findings).toEqual([]);
  });

  it('a thin one does not, nor one that ends blind, nor one too thin for metal to be pressed into', async () => {
    for (const one of [vent(1, 0.3, rim), vent(4, 2, 70), vent(4, 0.01, rim)])
      expect((await runCheck(ventDrain, moldOf(one))).findings).toEqual([]);
  });

  it('by the vent it leads into, round the longer way; two that lead into each other lead nowhere', async () => {
    const other = vent(4, 2, rim, { id: 'vent-other', placement: 'other' });
    const into = vent(4, 2, 65, { opensInto: 'vent-other' });
    const { findings } = await runCheck(ventDrain, moldOf(into, other));
    expect(findings.map(({ subject }) => subject).sort()).toEqual(['vent-other', 'vent-part']);
    const round = [into, { ...other, opensInto: 'vent-part' }];
    expect((await runCheck(ventDrain, moldOf(...round))).findings).toEqual([]);
  });

  it('is not told where nobody knows how the metal cools', async () => {
    expect(ventDrain.units({ ...moldOf(vent(4, 2, rim)), bench: { ...bench, rubber: {} } })).toEqual([]);
  });
});
