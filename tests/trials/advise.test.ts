import { describe, expect, it } from 'vitest';
import {
  advise,
  type Cavity,
  castingsOf,
  forecastHits,
  goodBy,
  type ToldAir,
  type TrialLog,
  worseSide,
} from '../../src/trials/index.ts';

/** Eight snails on one ring, four beetles near the axis and four far out. */
const cavities: Cavity[] = [
  ...ring('snail', 8, 70, 1),
  ...ring('beetle', 4, 45, 1),
  ...ring('beetle', 4, 95, 5),
];

function ring(master: string, count: number, radius: number, from: number): Cavity[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.25)) / count;
    return { id: `${master}-${from + i}`, master, x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
}

const idsOf = (master: string): string[] =>
  cavities.filter((one) => one.master === master).map(({ id }) => id);
const snails = idsOf('snail');
type Pour = TrialLog['pours'][number];
type Came = NonNullable<Pour['cavities']>[string][number]['came'];

/** A pour in which the first `count` of some came out badly and all others well. */
function pour(
  number: number,
  ids: readonly string[],
  count: number,
  came: Came,
  more: Partial<Pour> = {},
): Pour {
  const cavitiesSeen = Object.fromEntries(ids.slice(0, count).map((id) => [id, [{ came }]]));
  return { pour: number, cavities: cavitiesSeen, others: 'good', ...more };
}

const airOf = (master: string, told: ToldAir) => new Map(idsOf(master).map((id) => [id, told]));
const underGate: ToldAir = { told: 'all', volume: 12, frees: 'gate', width: 4 };
const inPocket: ToldAir = { told: 'all', volume: 3, frees: 'vent' };
const filled: ToldAir = { told: 'none', volume: 0 };
const gate = (width: number) => ({ kind: 'gate' as const, of: snails, width, depth: 2 });

const codes = (pours: readonly Pour[], air: ReadonlyMap<string, ToldAir> = new Map()) => {
  const { tries, heldBack } = advise({ pours: [...pours] }, cavities, air);
  return { tries: tries.map(({ code }) => code), heldBack: heldBack.map(({ code }) => code) };
};

describe('each rule fires', () => {
  it.each<[string, Pour[], ReadonlyMap<string, ToldAir>]>([
    ['try.open-gate', [pour(1, snails, 5, 'short')], airOf('snail', underGate)],
    ['try.vent', [pour(1, snails, 5, 'porous')], airOf('snail', inPocket)],
    ['try.hotter-metal', [pour(1, snails, 5, 'cold lap')], airOf('snail', filled)],
    ['try.faster', [pour(1, snails, 5, 'short')], airOf('snail', filled)],
    ['try.drier', [pour(1, snails, 5, 'porous')], airOf('snail', filled)],
    ['try.slower', [pour(1, snails, 2, 'flash')], new Map()],
    ['try.release', [pour(1, snails, 1, 'torn mold')], new Map()],
    [
      'try.warm-mold',
      [
        pour(1, snails, 7, 'short'),
        pour(2, snails, 6, 'short'),
        pour(3, snails, 0, 'short'),
        pour(4, snails, 0, 'short'),
      ],
      airOf('snail', filled),
    ],
    ['try.other-place', [1, 2, 3].map((n) => pour(n, idsOf('beetle').slice(0, 4), 4, 'short')), new Map()],
    [
      'try.center',
      [1, 2, 3].map((n) =>
        pour(
          n,
          cavities.filter(({ x }) => x > 5).map(({ id }) => id),
          7,
          'short',
        ),
      ),
      new Map(),
    ],
  ])('%s', (code, pours, air) => {
    expect(codes(pours, air).tries).toContain(code);
    // And not where all came out well.
    expect(
      codes(
        pours.map((one) => ({ ...one, cavities: {} })),
        air,
      ).tries,
    ).toEqual([]);
  });

  it('try.second-gate, once gate and vent were tried without help', () => {
    const vent = { kind: 'vent' as const, of: snails };
    const log = [
      pour(1, snails, 5, 'short', { cut: [gate(3)] }),
      pour(2, snails, 5, 'short', { cut: [gate(4)] }),
      pour(3, snails, 6, 'short', { cut: [gate(4), vent] }),
    ];
    const found = codes(log, airOf('snail', underGate));
    expect(found.tries[0]).toBe('try.second-gate');
    expect(found.tries).not.toContain('try.open-gate');
    expect(found.heldBack).toContain('trials.no-help');
    expect(codes(log.slice(0, 2), airOf('snail', underGate)).tries).not.toContain('try.second-gate');
  });
});

describe('what a trial has shown not to help is held back', () => {
  const before = pour(1, snails, 5, 'short', { cut: [gate(3)], speedRpm: 500 });
  it('for a gate', () => {
    const helped = codes(
      [before, pour(2, snails, 2, 'short', { cut: [gate(4)] })],
      airOf('snail', underGate),
    );
    expect(helped.tries).toContain('try.open-gate');
    const not = codes([before, pour(2, snails, 5, 'short', { cut: [gate(4)] })], airOf('snail', underGate));
    expect(not.tries).not.toContain('try.open-gate');
    expect(not.heldBack).toEqual(['trials.no-help']);
  });
  it('for the speed, but not where the gate was changed with it', () => {
    const faster = pour(2, snails, 5, 'short', { speedRpm: 550 });
    expect(codes([before, faster], airOf('snail', filled)).tries).not.toContain('try.faster');
    const both = { ...faster, cut: [gate(4)] };
    expect(codes([before, both], airOf('snail', filled)).tries).toContain('try.faster');
  });
});

describe('yield', () => {
  it('is counted by cavity, with those that nobody looked at left out', () => {
    const log: TrialLog = {
      pours: [pour(1, snails, 2, 'short'), { pour: 2, cavities: { 'snail-1': [{ came: 'good' }] } }],
    };
    const good = goodBy(
      castingsOf(
        log,
        cavities.map(({ id }) => id),
      ),
      ({ id }) => id,
    );
    expect(good.get('snail-1')).toMatchObject({ share: 0.5, of: 2 });
    expect(good.get('snail-3')).toMatchObject({ share: 1, of: 1 });
  });
  it('says on which side a disc is worse, and nothing where chance does as much', () => {
    const east = cavities.filter(({ x }) => x > 5).map(({ id }) => id);
    const placed = cavities.map(({ id }) => id);
    const worse = castingsOf({ pours: [1, 2, 3].map((n) => pour(n, east, 7, 'short')) }, placed);
    expect(worseSide(worse, cavities)?.angleDeg).toBe(0);
    const even = castingsOf({ pours: [pour(1, placed, 2, 'short')] }, placed);
    expect(worseSide(even, cavities)).toBeUndefined();
  });
  it('counts how often the forecast was right', () => {
    const castings = castingsOf(
      { pours: [pour(1, snails, 3, 'short'), pour(2, snails, 2, 'flash')] },
      cavities.map(({ id }) => id),
    );
    const hits = forecastHits(castings, new Map(snails.map((id) => [id, 'all'])));
    expect(hits.map(({ told, failed: { share, of } }) => [told, share, of])).toEqual([
      ['all', 3 / 16, 16],
      ['some', Number.NaN, 0],
      ['none', Number.NaN, 0],
    ]);
  });
});
