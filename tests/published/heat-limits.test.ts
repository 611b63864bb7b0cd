import { describe, expect, it } from 'vitest';
import { cureInhibition } from '../../src/checks/heat/cure-inhibition.ts';
import { heatOfCure } from '../../src/checks/heat/heat-cure.ts';
import { heatOfPour } from '../../src/checks/heat/heat-pour.ts';
import { translation } from '../../src/geometry/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { heatRow, standsC } from '../../src/tables/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { emptyMold, figureOf, nutAt, runCheck, smallSprue, withMaster } from '../checks/small-mold.ts';
import { ball, single } from '../revolved-solids.ts';

const bead = single(ball(5, [0, 0, 0]));
const codesOf = ({ findings }: { findings: readonly { code: string; subject: string }[] }) =>
  findings.map(({ code, subject }) => `${code} ${subject}`);

describe('heat.limit: tables of printing materials (deflection at 1.8 MPa, lower end of a range) and of alloys', () => {
  it.each([
    // ASTM D648 at 264 psi, a printer maker's sheet.
    ['PLA', 51, 10],
    ['PETG', 76, 10],
    ['ABS', 76, 10],
    ['ASA', 90, 10],
    ['PC', 127, 10],
    ['PA12', 95, 10],
    ['standard resin', 46, 10],
    ['Bi58Sn42', 138, 20],
    ['Sn63Pb37', 183, 20],
    ['pewter 91-7-2', 240, 20],
    // The eutectic of tin and lead; pure tin freezes at 231.93 C (ITS-90).
    ['leaded pewter', 183, 20],
    ['tin', 231.93, 20],
    ['silver', 779, 20],
    ["Wood's metal", 70, 20],
    ["Field's metal", 62, 20],
    ['Zamak 3', 381, 20],
    // 6061 is aged at 160 to 177 C: it may be held at the lower end.
    ['aluminum 6061-T6', 160, 0],
  ])('%s: %d C less %d K', (material, limit, margin) => {
    const row = heatRow(material);
    expect(row?.limitC).toBe(limit);
    expect(row && standsC(row)).toBe(limit - margin);
  });

  // One open paper gives 137 C as the glass transition of PLA, which is near its melting point.
  it('PLA softens near 59 C, whatever else is in print', () => {
    expect(heatRow('PLA')?.limitC).toBeLessThan(65);
  });

  it.each([
    'pewter',
    'solder',
    'zinc',
    'zamak',
    'bismuth alloy',
    'lead-free pewter',
    'PA6',
    'plaster',
    'gold',
  ])('is blank for %s: one word for much that differs, or no figure', (material) => {
    expect(heatRow(material)).toBeDefined();
    expect(heatRow(material)?.limitC).toBeUndefined();
  });

  it('is blank where only a figure at 0.45 MPa is in print', () => {
    expect(heatRow('high-temp resin')).toMatchObject({ name: 'high-temperature resin' });
    expect(heatRow('high temp resin')?.limitC).toBeUndefined();
    expect(heatRow('fired unobtainium')).toBeUndefined();
  });

  it('takes the least heat-proof of several named', () => {
    expect(heatRow('PC-ABS')?.name).toBe('ABS');
    expect(heatRow('aluminum-filled epoxy resin')?.name).toBe('standard resin');
    expect(heatRow('Pla, printed at home')?.name).toBe('PLA');
    expect(heatRow('plate glass')).toBeUndefined();
  });
});

const inCan = (material: string, bench: Mold['bench'] = { cure: { temperatureC: 155 } }): Mold => ({
  ...emptyMold,
  sprue: smallSprue,
  fixture: { ...emptyMold.fixture, material },
  bench,
});

const masterOf = (material: string): Mold => {
  const mold = withMaster(inCan('steel'), 'snail', bead, translation(60, 0, 0));
  return { ...mold, masters: mold.masters.map((one) => ({ ...one, material })) };
};

describe('in a can at 155 C', () => {
  // Makers' tables: of the plastics none but proven high-temperature resin stands 155 C under load; that one is blank.
  it.each(['PLA', 'PETG', 'ABS', 'ASA', 'PC', 'PA12', 'resin'])(
    'a sprue form of %s is a stop',
    async (material) => {
      const report = await runCheck(heatOfCure, inCan(material));
      expect(codesOf(report)).toEqual(['heat.fixture-soft sprue']);
      expect(report.findings[0].severity).toBe('stop');
    },
  );
  it.each(['high-temp resin', 'unobtainium', 'wax', 'PA6 (nylon)', 'pewter'])(
    'of %s nobody knows: a stop',
    async (material) => {
      expect(codesOf(await runCheck(heatOfCure, inCan(material)))).toEqual(['heat.unknown sprue']);
    },
  );
  it('a word that is no material is said to be none, with those that are known', async () => {
    const { findings } = await runCheck(heatOfCure, inCan('unobtainium'));
    expect(findings[0].values).toMatchObject({ which: 'material', thing: 'sprue', material: 'unobtainium' });
    expect(findings[0].values.known).toEqual(expect.arrayContaining(['PLA', 'PETG', 'aluminum', 'steel']));
    const { says, remedy } = sayFinding(findings[0], 'metric');
    expect(says).toContain('The sprue form is of unobtainium, which is no material known here');
    expect(remedy).toMatch(/PLA, PETG.*aluminum.*steel/);
    const halves = await runCheck(heatOfPour, poured('rigid', 'unobtainium', 160));
    expect(halves.findings[0].values).toEqual({ which: 'material', material: 'unobtainium', pour: 160 });
  });
  it.each(['aluminum', 'steel', 'brass'])('a sprue form of %s stands it', async (material) => {
    const report = await runCheck(heatOfCure, inCan(material));
    expect(codesOf(report)).toEqual([]);
    expect(report.figures).toHaveLength(1);
  });

  // Eutectic of Bi58Sn42: 138 C. It would be molten.
  it('a bismuth-tin master is a stop, a pewter one is not', async () => {
    expect(codesOf(await runCheck(heatOfCure, masterOf('Bi-Sn')))).toEqual(['heat.master-soft snail']);
    const pewter = await runCheck(heatOfCure, masterOf('pewter 91-7-2'));
    expect(codesOf(pewter)).toEqual([]);
    expect(figureOf(pewter, 'heat.limit', 'snail')).toBe(220);
  });

  it('names every fixture that is made; bought cap nuts are none', async () => {
    const mold: Mold = {
      ...inCan('PLA'),
      supports: [{ placement: 'fern', clearance: 0.2 }],
      tabs: [{ id: 'tab-1', angleRad: 0, width: 10, length: 8, height: 3, inset: 1 }],
      bosses: [nutAt('nut', 90, 0), nutAt('dome', -90, 0, { kind: 'dome' })],
    };
    const { findings } = await runCheck(heatOfCure, mold);
    expect(findings.map(({ subject, values }) => [subject, values.thing])).toEqual([
      ['sprue', 'sprue'],
      ['fern', 'buildUp'],
      ['tab-1', 'tab'],
      ['dome', 'boss'],
    ]);
    expect(findings.map((one) => sayFinding(one, 'metric').says.replace(/ is of.*/, ''))).toEqual([
      'The sprue form',
      'The build-up under fern',
      'The tab tab-1',
      'The boss dome',
    ]);
  });

  it('takes a build-up for what the plan says it is of; cut from rubber it cures with the mold', async () => {
    const of = async (material: string) =>
      codesOf(
        await runCheck(heatOfCure, {
          ...inCan('steel'),
          supports: [{ placement: 'fern', clearance: 0.2, material }],
        }),
      );
    expect(await of('rubber, cut by hand')).toEqual([]);
    expect(await of('PLA')).toEqual(['heat.fixture-soft fern']);
    expect(await of('unobtainium')).toEqual(['heat.unknown fern']);
  });

  // ISO 75-2 method A: PLA bends at 51 C, and no raw rubber cures under 140 C.
  it('warns of plastic formers at once, before the plan says how hot the can gets', async () => {
    const { findings } = await runCheck(heatOfCure, inCan('PLA', {}));
    expect(codesOf({ findings })).toEqual(['heat.former-soft fixture', 'heat.not-checked cure']);
    const [soft] = findings;
    expect(soft).toMatchObject({ severity: 'warn', values: { measured: 140, material: 'PLA' } });
    expect(soft.values.names).toEqual(['sprue']);
    expect(soft.values.limit).toBeLessThan(60);
    const { remedy } = sayFinding(soft, 'metric');
    const order = [
      'print each larger',
      'silicone that cures cold',
      'cast it in a metal',
      'dress it',
      'cold can',
    ];
    const places = order.map((step) => remedy.indexOf(step));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(Math.min(...places)).toBeGreaterThan(0);
  });

  it('does not warn of what stands any usual cure', async () => {
    for (const material of ['aluminum', 'steel'])
      expect(codesOf(await runCheck(heatOfCure, inCan(material, {})))).toEqual(['heat.not-checked cure']);
  });

  it('says in a note that the cure is left out, and stops where a material is', async () => {
    expect(codesOf(await runCheck(heatOfCure, inCan('steel', {})))).toEqual(['heat.not-checked cure']);
    const mold = withMaster(inCan('steel'), 'snail', bead, translation(60, 0, 0));
    const { findings } = await runCheck(heatOfCure, mold);
    expect(findings).toMatchObject([
      {
        code: 'heat.unknown',
        severity: 'stop',
        subject: 'snail',
        values: { which: 'unsaid', thing: 'master' },
      },
    ]);
    const usual = inCan('PLA', { cure: { temperatureC: 40 } });
    expect(
      codesOf(await runCheck(heatOfCure, { ...usual, fixture: { ...usual.fixture, assumed: true } })),
    ).toEqual(['heat.unknown sprue']);
  });

  it('is about what goes into a can only', async () => {
    expect(heatOfCure.units({ ...inCan('PLA'), process: 'rigid' })).toEqual([]);
    expect(heatOfCure.units({ ...inCan('PLA'), process: 'poured' })).toEqual([]);
  });
});

// ISO 75-2, method A: 1.80 MPa. What is pressed harder was not tested so.
it('a plastic pressed harder than it was tested with is a stop', async () => {
  const bench = (pressurePa: number) => ({ cure: { temperatureC: 40 }, closing: { pressurePa } });
  expect(codesOf(await runCheck(heatOfCure, inCan('PLA', bench(1.8e6))))).toEqual([]);
  expect(codesOf(await runCheck(heatOfCure, inCan('PLA', bench(1.9e6))))).toEqual([
    'heat.load-untested sprue',
  ]);
  expect(codesOf(await runCheck(heatOfCure, inCan('steel', bench(1.9e6))))).toEqual([]);
  // In print without the load it was measured under: nothing can be claimed of it.
  const petg = await runCheck(heatOfCure, inCan('PETG', bench(0.1e6)));
  expect(petg.findings).toMatchObject([
    { code: 'heat.load-untested', severity: 'stop', values: { which: 'unstated', material: 'PETG' } },
  ]);
  // How hard it is pressed is not said: that does not let it through.
  const unsaid = await runCheck(heatOfCure, inCan('PLA', { cure: { temperatureC: 40 } }));
  expect(unsaid.findings).toMatchObject([
    { code: 'heat.load-untested', severity: 'stop', values: { which: 'unsaid', limit: 1.8e6 } },
  ]);
});

const poured = (process: Mold['process'], material: string, pourC: number, rubber?: object): Mold => ({
  ...withMaster({ ...emptyMold, process }, 'snail', bead, translation(60, 0, 0)),
  fixture: { ...emptyMold.fixture, material },
  bench: { alloy: { pourC }, ...(rubber && { rubber }) },
});

describe('heat.halfLimit', () => {
  // What a compound stands, only its maker knows.
  it.each(['organic rubber', 'silicone', 'room-temperature silicone', 'natural rubber, gum'])(
    "%s without its maker's limit is a stop",
    async (compound) => {
      const { findings, figures } = await runCheck(heatOfPour, poured('rubber', 'steel', 200, { compound }));
      expect(findings).toMatchObject([
        { code: 'heat.half-unknown', severity: 'stop', values: { which: 'compound' } },
      ]);
      expect(figures).toEqual([]);
    },
  );

  it("goes by the maker's limit where the plan has one", async () => {
    const report = await runCheck(
      heatOfPour,
      poured('rubber', 'steel', 300, { compound: 'gum', maxTemperatureC: 310 }),
    );
    expect(codesOf(report)).toEqual([]);
    expect(report.figures).toMatchObject([{ value: 310, estimated: false }]);
  });

  // Tin alloys are poured at 240 C and more: no plastic half stands that. Bi58Sn42 at 160 C still melts PLA.
  it.each([
    ['PLA', 160, 'heat.pour-too-hot alloy'],
    ['PC', 300, 'heat.pour-too-hot alloy'],
    ['high-temp resin', 160, 'heat.half-unknown alloy'],
    ['plaster', 300, 'heat.damp alloy', 'heat.half-unknown alloy'],
  ])('rigid halves of %s under metal at %d C', async (material, pourC, ...codes) => {
    expect(codesOf(await runCheck(heatOfPour, poured('rigid', material, pourC)))).toEqual(codes);
  });
  it('rigid halves of PC stand cold wax, those of aluminum stand zinc below its own solidus of 582 C', async () => {
    expect(codesOf(await runCheck(heatOfPour, poured('rigid', 'PC', 80)))).toEqual([]);
    const aluminum = await runCheck(heatOfPour, poured('rigid', 'aluminum', 430));
    expect(codesOf(aluminum)).toEqual([]);
    expect(figureOf(aluminum, 'heat.halfLimit', 'alloy')).toBe(582);
    expect(codesOf(await runCheck(heatOfPour, poured('rigid', 'aluminum', 600)))).toEqual([
      'heat.pour-too-hot alloy',
    ]);
  });

  it('a compound nobody knows is a stop, one the plan leaves out a note', async () => {
    expect(
      codesOf(await runCheck(heatOfPour, poured('rubber', 'PLA', 280, { compound: 'green stuff' }))),
    ).toEqual(['heat.half-unknown alloy']);
    expect(codesOf(await runCheck(heatOfPour, poured('rubber', 'PLA', 280)))).toEqual([
      'heat.not-checked alloy',
    ]);
  });
});

// Common practice, no published source.
it.each([
  ['resin', 1],
  ['sulfur clay', 1],
  ['PLA', 0],
])('pattern plates of %s: %d warnings of cure inhibition', async (material, count) => {
  const { findings } = await runCheck(cureInhibition, poured('poured', material, 20));
  expect(findings.map(({ code }) => code)).toEqual(Array(count).fill('heat.cure-inhibition'));
});
