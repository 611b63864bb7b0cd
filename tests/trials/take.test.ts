import { describe, expect, it } from 'vitest';
import { type Finding, finding } from '../../src/findings/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { takeInPlan } from '../../src/trials/index.ts';

const text = `process: rubber # ours
disc: { diameter: 230 mm, thickness: 12 mm }
alloy: { name: tin, pour: 280 C } # by the dial
spin: { speed: 500 rpm }
masters:
  snail: { width: 12 mm, length: 16 mm, above: 4 mm, below: 3 mm }
  beetle: { width: 12 mm, length: 16 mm, above: 4 mm, below: 3 mm }
placements:
  - { master: snail, ring: { count: 2, radius: 70 mm } }
  - { master: beetle, ring: { count: 2, radius: 70 mm, start: 90 } }
gates:
  - { placements: [all], width: 3, depth: 2 } # cut by hand
vents: []
`;

function taken(said: Finding, from = text) {
  const { plan } = readPlan(from, 'plan.yaml');
  if (!plan) throw new Error('the plan reads');
  const edited = takeInPlan(from, plan, said);
  return 'text' in edited ? edited.text : String(edited.fault);
}

const lost = { bad: 3, measured: 4 };
const about = { subject: 'snail' };

describe('what is proposed goes into the plan, comments kept', () => {
  it('as a speed, up or down a twentieth', () => {
    expect(taken(finding('try.faster', { ...about, values: lost }))).toContain('spin: { speed: 525 rpm }');
    const rim = text.replace('speed: 500 rpm', 'rimSpeed: 6 m/s');
    expect(taken(finding('try.slower', { ...about, values: lost }), rim)).toContain('rimSpeed: 5.7 m/s');
  });
  it('as hotter metal', () => {
    expect(taken(finding('try.hotter-metal', { ...about, values: lost }))).toContain(
      'pour: 290 C } # by the dial',
    );
  });
  it('as a gate of its own, or in its place where no other has it', () => {
    const wider = finding('try.open-gate', { ...about, values: { ...lost, volume: 4, width: 3.84 } });
    const edited = taken(wider);
    expect(edited).toContain('{ placements: [beetle], width: 3, depth: 2 } # cut by hand');
    expect(edited).toMatch(/placements: \[snail\], width: 3.9, depth: 2.*# opened after a trial/);
    const alone = text.replace('placements: [all]', 'placements: [snail]');
    expect(taken(wider, alone)).toContain('{ placements: [snail], width: 3.9 mm, depth: 2 } # cut by hand');
    expect(taken(wider, edited)).toContain('as wide as that already');
  });
  it('and not where it is for the bench, or the plan says too little', () => {
    expect(taken(finding('try.release', { ...about, values: lost }))).toContain('at the bench');
    expect(taken(finding('try.vent', { ...about, values: { ...lost, volume: 4 } }))).toContain(
      'discwright gate',
    );
    const silent = text.replace('spin: { speed: 500 rpm }\n', '').replace(', pour: 280 C', '');
    expect(taken(finding('try.faster', { ...about, values: lost }), silent)).toContain('how fast');
    expect(taken(finding('try.hotter-metal', { ...about, values: lost }), silent)).toContain('how hot');
  });
});
