import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { run, runAnswering, workbench } from './workbench.ts';

const bench = workbench();

/** Stand-ins, filled through gates that are too narrow to let air out: what is forecast of them is little work. */
const charms = (gate: string) => `process: rubber
units: UNITS
disc: { diameter: 9 in, thickness: 1/2 in }
alloy: { name: tin, pour: 554 F }
spin: { speed: 500 rpm }
sprue: { well: { diameter: 50 mm, depth: 8 mm } }
masters:
  seed-head: { width: 6 mm, length: 14 mm, above: 3 mm, below: 3 mm }
placements:
  - { master: seed-head, ring: { count: 4, radius: 70 mm } }
gates: [{ placements: [all], width: ${gate}, depth: 1 mm }]
vents: []
`;

function planNamed(name: string, units = 'metric', gate = '1 mm') {
  const plan = bench.put(`${name}.yaml`, charms(gate).replace('UNITS', units));
  return { plan, log: bench.path(`${name}.trials.yaml`) };
}

const textOf = (path: string): string => readFileSync(path, 'utf8');

describe('pour', () => {
  it('notes what is set, and counts on', async () => {
    const { plan, log } = planNamed('noted');
    const first = await run('pour', plan, '--set', 'speed=500rpm', '--set', 'seed-head=short tip 20 %');
    expect(first).toEqual({ code: 0, err: '', out: `Pour 1 noted in ${log}: 0 good, 4 not.` });
    const second = await run('pour', plan, '--set', 'seed-head-2=cold lap', '--set', 'others=good');
    expect(second.out).toContain('Pour 2 noted');
    expect(second.out).toContain('3 good, 1 not');
    expect(textOf(log)).toContain('seed-head-1: { came: short, where: tip, missing: 20 % }');
  });

  it('asks line by line, once more where an answer is not understood', async () => {
    const { plan, log } = planNamed('asked', 'inch');
    const answers = [
      '3 May',
      '',
      '80 F',
      '',
      '8 oz',
      'light',
      'seed-hed-1=short',
      'seed-head-1=shrt',
      'seed-head-1=short',
      '',
      '',
      'none',
      '',
    ];
    const ran = await runAnswering(answers, 'pour', plan);
    expect(ran.code).toBe(0);
    expect(ran.err).toContain('did you mean seed-head-1?');
    expect(ran.err).toContain('does not begin with one of good, short');
    expect(ran.out).toContain('3 good, 1 not');
    expect(textOf(log)).toContain('speed: 500 rpm');
    expect(textOf(log)).toContain('metal: 290 C');
  });

  it('writes nothing where the asking is broken off, or an answer cannot be', async () => {
    const { plan, log } = planNamed('broken-off');
    expect(await runAnswering(['3 May', ''], 'pour', plan)).toMatchObject({ code: 130 });
    for (const setting of [
      'speed=500 mm',
      'seed-head-9=short',
      'seed-head-1=shrt',
      'speed',
      'pour=0',
      'others=bad',
    ]) {
      const ran = await run('pour', plan, '--set', setting);
      expect([setting, ran.code, ran.out]).toEqual([setting, 2, '']);
      expect(ran.err).not.toContain(log);
    }
    expect(() => textOf(log)).toThrow();
  });

  it('says what is wrong with a log cut off in the middle, and leaves it', async () => {
    const { plan, log } = planNamed('cut-off');
    writeFileSync(log, 'pours:\n  - { pour: 1, cavities: { seed-head-1: sh');
    const ran = await run('pour', plan, '--set', 'others=good');
    expect(ran.code).toBe(2);
    expect(ran.err).toContain(`${log}:2:`);
    expect(textOf(log)).toMatch(/sh$/);
  });

  it('loses nothing where somebody else writes meanwhile', async () => {
    const { plan, log } = planNamed('both');
    await run('pour', plan, '--set', 'others=good');
    const theirs = `${textOf(log)}# theirs\n`;
    const { openLog, saveLog } = await import('../../cli/pours/log-file.ts');
    const { readPlan } = await import('../../src/plan/index.ts');
    const read = readPlan(textOf(plan), plan).plan;
    if (!read) throw new Error('the plan reads');
    const file = await openLog(plan, read);
    writeFileSync(log, theirs);
    await expect(saveLog(file, 'mine')).rejects.toThrow('was changed meanwhile');
    expect(textOf(log)).toBe(theirs);
  });

  it('reports in the units of the plan, and proposes what the forecast speaks for', async () => {
    const { plan } = planNamed('reported', 'inch');
    expect((await run('pour', plan, '--report')).err).toContain('there are no trials yet');
    await run('pour', plan, '--set', 'metal=554 F', '--set', 'speed=500rpm', '--set', 'seed-head=short');
    const { code, out } = await run('pour', plan, '--report', '--no-cache');
    expect(code).toBe(0);
    expect(out).toMatch(/1 +554 F \(290 C\) +500 rpm +0 of 4/);
    expect(out).toContain('0 % (0 to 49 %) good');
    expect(out).toMatch(/try\.(open-gate|vent) +seed-head/);
    expect((await run('pour', plan, '--take', '9')).err).toContain('counted from 1');
    const taken = await run('pour', plan, '--take', '1');
    expect(taken).toMatchObject({ code: 0, err: '' });
    expect(taken.out).toContain('try.open-gate seed-head: written into');
    expect(textOf(plan)).not.toContain('width: 1 mm, depth');
    const { out: json } = await run('pour', plan, '--report', '--json');
    expect(JSON.parse(json)).toMatchObject({
      good: { share: 0, of: 4 },
      byMaster: { 'seed-head': { of: 4 } },
    });
  });
});
