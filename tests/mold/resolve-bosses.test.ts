import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/index.ts';
import { resolveLayout } from '../../src/mold/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { sayFinding } from '../../src/wording/index.ts';

const text = (boss: string, more = '', process = 'rubber'): string =>
  `process: ${process}
disc: { diameter: 200 }
registration: { flex: 0.1, ${more} bosses: [{ ${boss}, at: { radius: 80, angle: 0 } }] }
`;

function settled(written: string) {
  const { plan, findings } = readPlan(written, 'bosses.yaml');
  if (!plan) throw new Error(JSON.stringify(findings));
  const { mold, findings: laid } = resolveLayout(plan, []);
  return { boss: mold.bosses[0], codes: laid.map(({ code }) => code) };
}

const faults = (boss: string, more = ''): readonly Finding[] =>
  readPlan(text(boss, more), 'bosses.yaml').findings;

const degree = Math.PI / 180;

it.each([
  ['kind: dome, size: 13/32 in', '10.319'],
  ['kind: hexagon, size: 13/32 in', '10.319'],
  ['kind: dome, size: 0.41 in', '10.414'],
  ['kind: dome, size: 9', '9'],
])('%s is written no finer than it is made', (boss, size) => {
  expect(settled(text(boss)).boss.size).toBe(size);
});

describe('a hexagon', () => {
  it('after a nut has the width and the height of that nut below the plane (ISO 4032)', () => {
    const { boss } = settled(text('kind: hexagon, size: m10'));
    expect(boss).toMatchObject({
      kind: 'hexagon',
      size: 'M10',
      acrossFlats: 16,
      rootDepth: 8.4,
      headRadius: 8,
    });
    expect(boss.headDraftRad).toBeCloseTo(10 * degree, 12);
  });

  it('after an inch nut likewise (ASME B18.2.2), where the fraction has no unit', () => {
    const { boss } = settled(text('kind: hexagon, size: 3/8'));
    expect(boss.size).toBe('3/8');
    expect(boss.acrossFlats).toBeCloseTo((9 / 16) * 25.4, 9);
    expect(boss.rootDepth).toBeCloseTo(0.337 * 25.4, 9);
  });

  it.each([
    ['13', 13],
    ['3/8 in', 9.525],
    ['1/2 in', 12.7],
    ['1.3 cm', 13],
  ])('by its width across flats: %s', (size, flats) => {
    const { boss } = settled(text(`kind: hexagon, size: ${size}, height: 5, depth: 4, draft: 6`));
    expect(boss.acrossFlats).toBeCloseTo(flats, 12);
    expect(boss).toMatchObject({ headHeight: 5, rootDepth: 4, turnRad: 0 });
    expect(boss.headDraftRad).toBeCloseTo(6 * degree, 12);
  });

  it('of a nut the table lacks, or one that leaves hardly a top, is a stop', () => {
    expect(settled(text('kind: hexagon, size: M9')).codes).toEqual(['layout.unknown-nut']);
    // 13 / 2 - 8 tan 40 deg is below 0; with 30 deg it is 1.88, 29 % of 6.5.
    expect(settled(text('kind: hexagon, size: M8, height: 8, draft: 40')).codes).toEqual([
      'layout.boss-pointed',
    ]);
    expect(settled(text('kind: hexagon, size: M8, height: 8, draft: 30')).codes).toEqual([
      'layout.boss-pointed',
    ]);
    expect(settled(text('kind: hexagon, size: M8, height: 8, draft: 29')).codes).toEqual([]);
  });

  it('is told what it cannot have', () => {
    expect(faults('kind: hexagon, size: wide')[0].code).toBe('plan.quantity');
    // A fraction without its unit is asked about.
    expect(faults('kind: dome, size: 3/8')[0].code).toBe('plan.quantity');
    expect(faults('kind: hexagon, size: 0.2')[0].code).toBe('plan.out-of-range');
    expect(faults('kind: hexagon, size: 0')[0].code).toBe('plan.out-of-range');
    expect(faults('kind: hexagon, size: 13, draft: 60')[0].code).toBe('plan.out-of-range');
    const [only, ...rest] = faults('kind: dome, size: 13, draft: 5');
    expect([only.code, ...rest]).toEqual(['plan.choose-one']);
    expect(sayFinding(only, 'metric').says).toContain('Only a hexagon has a `draft`');
    expect(faults('kind: cap nut, size: M8, draft: 5')[0].code).toBe('plan.choose-one');
    expect(sayFinding(faults('kind: hexagn, size: 13')[0], 'metric').says).toContain('hexagon');
  });
});

describe('sockets of rigid halves', () => {
  const rigid = (more: string, fixture = ''): string =>
    `${text('kind: dome, size: 12', more, 'rigid')}${fixture}`;

  it('lean and keep clear by the process of the fixtures', () => {
    for (const [process, draft, clearance] of [
      ['FDM', 2, 0.25],
      ['SLA', 1, 0.125],
      ['machined', 1, 0.05],
    ] as const) {
      const { boss } = settled(rigid('', `fixture: { process: ${process} }\n`));
      expect(boss.socketDraftRad).toBeCloseTo(draft * degree, 12);
      expect(boss.clearance).toBe(clearance);
    }
    const { boss } = settled(rigid(''));
    expect(boss.socketDraftRad).toBeCloseTo(degree, 12);
    expect(boss.clearance).toBe(0.25);
  });

  it('as the plan says, whatever the process', () => {
    const { boss } = settled(rigid('draft: 4, clearance: 0.4,', 'fixture: { process: SLA }\n'));
    expect(boss.socketDraftRad).toBeCloseTo(4 * degree, 12);
    expect(boss.clearance).toBe(0.4);
  });

  it('and have neither where silicone or resin takes the shape of the bosses', () => {
    const { boss } = settled(text('kind: dome, size: 12', 'draft: 4,', 'poured'));
    expect(boss.socketDraftRad).toBe(undefined);
    expect(boss.clearance).toBe(0);
  });
});
