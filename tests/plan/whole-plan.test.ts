import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { planJsonSchema, readPlan } from '../../src/plan/index.ts';
import { planSchema } from '../../src/plan/schema.ts';

/** Every section and every field once. */
const text = `title: Hedgerow
revision: 3
units: metric
paper: Letter
process: rubber
disc: { diameter: 9 in, lower: 19, upper: 3/4 in, rimChamfer: 1, label: Hedgerow 3 }
sectors: { spacing: 8 in, radius: 60 % }
can: { diameter: 230, depth: 39, wall: 10, material: steel, floor: 6, lid: 6, spacer: 1, spew: open, grooves: { count: 8, width: 6, depth: 2, length: 1/2 in } }
closing:
  bolts: { size: 3/8, grade: grade 2, count: 4, circle: 10 in, tension: 9 kN, cure: taken out }
  clamps: { count: 2, force: 20 kN, circle: 10 1/2 in, screw: M12 }
  press: { force: 300 kN, cure: in the press }
  lid: { material: steel, thickness: 1/2 in, hole: 31, yield: 170 MPa }
  pressure: 200 psi
machine:
  { maxSpeed: 1200, direction: clockwise, closingForce: 800 N, stiffness: 2 kN/mm, plateMass: 3 kg, plateDiameter: 10 in, plateUnbalance: 72 g.mm, centering: 0.2, maxUnbalance: 900 g.mm }
rubber:
  compound: gum
  density: 1.1 g/cm3
  t90: 12 min
  referenceTemperature: 320 F
  activationEnergy: 90 kJ/mol
  diffusivity: 0.11 mm2/s
  conductivity: 0.22 W/mK
  expansion: 6.6e-4 /K
  laidIn: 1.9 kg
  overcure: 3 h
  cureFrom: 140
  cureTo: 170
  maxTemperature: 290
  hardness: 50
  modulus: 2.5 MPa
  mooney: 45
  scorch: 4 min
alloy: { name: pewter, density: 7.3 g/cm3, liquidDensity: 6.9 g/cm3, solidus: 240, liquidus: 300, pour: 320 C, latentHeat: 59 kJ/kg, heatMolten: 0.24 kJ/kgK, heatSolid: 230 J/kgK, conductivity: 50 W/mK }
shrink: { alloy: 0.5 %, rubber: 0.012 }
sprue:
  hole: 32
  draft: 3
  well: { diameter: 48, depth: 8 }
  dome: { diameter: 20, height: 4 }
  fillet: 1.5
  grip: 15
masters:
  ivy:
    file: masters/ivy.stl
    unit: in
    lie: { turnX: 180, turnY: 90, turnZ: 45 deg }
    allowance: included
    mass: 4.2 g
    repair: { edge: 0.25, closeHoles: 5 }
    entry: { tip: { angle: 180 } }
  fern: { file: fern.stl, length: 1 1/4 in }
  moss: { file: moss.stl, height: 28 }
  shell: { file: shell.stl, scale: 50 % }
  button: { width: 12, length: 14, above: 2, below: 1, mass: 0.1 oz, allowance: add }
  Schnecke-é: { outline: snail.svg, above: 3, below: 0 }
placements:
  - { id: top, master: ivy, at: { radius: 60 %, angle: 30 }, turn: 90, sink: silhouette }
  - { master: button, ring: { count: 2, radius: { fromRim: 30 }, start: 90 }, sink: 50 % }
  - master: Schnecke-é
    sink: 1
    each: [{ radius: 50, angle: 0, turn: 180 }, { radius: 55, angle: 10 }]
registration:
  clearance: 0.2
  flex: 0.1
  bosses:
    - { id: north, kind: cap nut, size: m8, at: { radius: 100, angle: 0 }, turn: 30, clearance: 0.1 }
    - { kind: cap nut, size: 3/8 in, at: { radius: 100, angle: 90 } }
    - { kind: cone, size: 1/2 in, at: { radius: 100, angle: 180 }, height: 6, depth: 3 }
supports: [{ placements: [top, button], clearance: 0.2 }]
tabs: [{ id: pry, angle: 180, width: 20, length: 12, height: 3, inset: 1 }]
notches: [{ id: mark, angle: 45, width: 6, depth: 4 }]
runners: [{ id: round, ring: { radius: 40, spokes: 2, start: 20 } }, { id: arm, to: { radius: 60, angle: 200 }, path: { arc: 10 }, width: 5, endWidth: 4, section: V, half: lower }]
gates: [{ placements: all, width: 3, depth: 1.5, endWidth: 2, endDepth: 1, section: { trapezoid: 15 }, half: upper, land: { length: 2, width: 1.5, depth: 0.8 } }, { placements: top, from: button-1, path: { through: [{ radius: 50, angle: 9 }] }, slow: { pocket: 4 } }]
vents:
  - { placements: top, joins: true, entry: tip, path: routed }
  - { placements: Schnecke-é, entry: { x: 3, y: -2 }, path: { through: [{ radius: 70, angle: 5 }] }, to: { pocket: 6 } }
  - { placements: button, entry: { angle: 90 }, path: { arc: -30 } }
arrange:
  pieces: { ivy: { count: 6, gate: tip, worth: 2 }, button: { count: as many as fit, most: 12, place: inner, sink: 1, gate: { angle: 90 } } }
  wall: 3
  ample: no end
  gates: { width: 3, gap: 2, lean: 25 }
  symmetry: as the counts allow
  effort: little
  seed: 7
ventPins: [{ diameter: 1.5, half: lower, at: { x: 30, y: -20 } }, { diameter: 1/16 in, half: upper, placements: top, place: { x: 2, y: 1 } }]
parting: { surface: follow, slope: 45, limit: { up: 6, down: 5 }, cell: 0.125 }
spin: { speed: 400, grade: G6.3 }
cure: { temperature: 155, time: 2 h, heating: platens, start: 68 F, cooling: in the can, film: 20 W/m2K, contact: 500 W/m2K, coolingConstant: 2 h }
pouring: { fill: 2 s, openAfter: 90 s, handling: 2 min, halves: 104 F, coolest: 40, warmest: 110, air: 20, film: 15 W/m2K, contact: 1000 W/m2K }
order: { pieces: { ivy: 120, button: 60 }, misruns: 5 %, loss: 2 % }
prices: { in: crowns, metal: 32 per kg, rubber: 10 per lb, work: 30 per h, other: 12, moldTime: 6 h, run: 500 }
fixture:
  material: PETG
  clearance: 0.3
  chordError: 0.02
  relieve: true
  compensation: 0.2 %
  bed: { x: 250, y: 210, z: 200 }
materials:
  vat 240: { kind: resin, heatLimit: 240, load: 1.8 MPa, strength: 50 MPa, density: 1.2 g/cm3, expansion: 5.5e-5 /K, poisson: 0.4, conductivity: 0.2 W/mK, heatCapacity: 1500 J/kgK, source: data sheet }
limits:
  { cover: 3, wall: 3, web: 0.8, cavityToWell: 8, cavityToBoss: 5, cavityToRim: 10, bossToRim: 6, falseSeat: 3, coarsening: 0.05 }
severity: { cover.thin: { severity: warn, reason: thin on purpose } }
`;

/** Line of the text in which a piece of it stands, counted from 1. */
const lineOf = (piece: string): number => text.slice(0, text.indexOf(piece)).split('\n').length;

const degrees = (value: number): number => (value * Math.PI) / 180;

test('every section and field comes out in internal units, and nothing else does', () => {
  const { plan } = readPlan(text, 'plan.yaml');
  const { at: _disc, written: ofDisc, ...disc } = plan?.disc ?? {};
  expect(disc).toEqual({ diameter: 228.6, lower: 19, upper: 19.05, rimChamfer: 1, label: 'Hedgerow 3' });
  expect(ofDisc?.map(({ name, bare, at }) => [name, bare, at.line])).toEqual([
    ['diameter', undefined, 6],
    ['lower', '19', 6],
    ['upper', undefined, 6],
    ['rimChamfer', '1', 6],
    ['label', undefined, 6],
  ]);
  expect(plan).toMatchObject({
    title: 'Hedgerow',
    revision: '3',
    units: 'metric',
    paper: 'Letter',
    process: 'rubber',
    sectors: { spacing: 203.2, radius: { share: 0.6 } },
    can: {
      diameter: 230,
      depth: 39,
      wall: 10,
      material: 'steel',
      floor: 6,
      lid: 6,
      spacer: 1,
      spew: 'open',
      grooves: { count: 8, width: 6, depth: 2, length: 12.7 },
    },
    closing: {
      bolts: { size: '3/8', grade: 'grade 2', count: 4, circle: 254, tension: 9000, cure: 'taken out' },
      clamps: { count: 2, force: 20_000, circle: 266.7, screw: 'M12' },
      press: { force: 300_000, cure: 'in the press' },
      lid: { material: 'steel', thickness: 12.7, hole: 31, yieldPa: 170e6 },
      // 200 psi in NIST SP 811: 200 x 6894.757 Pa.
      pressurePa: expect.closeTo(1_378_951.4, 0),
    },
    machine: {
      maxSpeedRpm: 1200,
      direction: 'clockwise',
      closingForceN: 800,
      stiffnessNMm: 2000,
      plateMassKg: 3,
      plateDiameter: 254,
      plateUnbalanceGmm: 72,
      centering: 0.2,
      maxUnbalanceGmm: 900,
    },
    rubber: {
      compound: 'gum',
      densityKgM3: 1100,
      t90S: 720,
      referenceTemperatureC: 160,
      activationEnergyJMol: 90_000,
      diffusivityM2S: 1.1e-7,
      conductivityWMK: 0.22,
      expansionPerK: 6.6e-4,
      laidInKg: 1.9,
      overcureS: 10_800,
      cureFromC: 140,
      cureToC: 170,
      maxTemperatureC: 290,
      hardness: 50,
      modulusPa: 2.5e6,
      mooney: 45,
      scorchS: 240,
    },
    alloy: {
      name: 'pewter',
      densityKgM3: 7300,
      liquidKgM3: 6900,
      solidusC: 240,
      liquidusC: 300,
      pourC: 320,
      latentHeatJKg: 59_000,
      heatMoltenJKgK: 240,
      heatSolidJKgK: 230,
      conductivityWMK: 50,
    },
    order: { pieces: { ivy: 120, button: 60 }, misruns: 0.05, loss: 0.02 },
    // 10 over 0.45359237 kg.
    prices: {
      in: 'crowns',
      metalPerKg: 32,
      rubberPerKg: expect.closeTo(22.04623, 4),
      workPerHour: 30,
      other: 12,
      moldTimeS: 21_600,
      run: 500,
    },
    pouring: {
      fillS: 2,
      openAfterS: 90,
      handlingS: 120,
      halvesC: 40,
      coolestC: 40,
      warmestC: 110,
      airC: 20,
      filmWM2K: 15,
      contactWM2K: 1000,
    },
    shrink: { alloy: 0.005, rubber: 0.012 },
    sprue: {
      hole: 32,
      draftRad: degrees(3),
      well: { diameter: 48, depth: 8 },
      dome: { diameter: 20, height: 4 },
      fillet: 1.5,
      grip: 15,
    },
    masters: {
      ivy: {
        kind: 'mesh',
        file: 'masters/ivy.stl',
        unit: 'in',
        lie: { xRad: degrees(180), yRad: degrees(90), zRad: degrees(45) },
        allowance: 'included',
        massKg: 0.0042,
        repair: { edge: 0.25, closeHoles: 5 },
      },
      fern: { kind: 'mesh', file: 'fern.stl', length: 31.75 },
      moss: { kind: 'mesh', file: 'moss.stl', height: 28 },
      shell: { kind: 'mesh', file: 'shell.stl', scale: 0.5 },
      button: { kind: 'stand-in', shape: { width: 12, length: 14 }, above: 2, below: 1, allowance: 'add' },
      'Schnecke-é': { kind: 'stand-in', shape: { outline: 'snail.svg' }, above: 3, below: 0 },
    },
    placements: [
      {
        id: 'top',
        master: 'ivy',
        where: { position: { radius: { share: 0.6 }, angleRad: degrees(30) } },
        turnRad: degrees(90),
        sink: 'silhouette',
        at: { file: 'plan.yaml', line: lineOf('id: top'), column: 5 },
      },
      { where: { ring: { count: 2, radius: { fromRim: 30 }, startRad: degrees(90) } }, sink: { share: 0.5 } },
      {
        where: {
          each: [
            { radius: { length: 50 }, angleRad: 0, turnRad: degrees(180) },
            { radius: { length: 55 }, angleRad: degrees(10) },
          ],
        },
        sink: { depth: 1 },
      },
    ],
    registration: {
      clearance: 0.2,
      flex: 0.1,
      bosses: [
        { id: 'north', kind: 'cap nut', size: 'M8', turnRad: degrees(30), clearance: 0.1 },
        {
          kind: 'cap nut',
          size: '3/8',
          where: { position: { radius: { length: 100 }, angleRad: degrees(90) } },
        },
        { kind: 'cone', diameter: 12.7, height: 6, depth: 3, at: { line: lineOf('kind: cone'), column: 7 } },
      ],
    },
    supports: [{ placements: ['top', 'button'], clearance: 0.2 }],
    tabs: [{ id: 'pry', angleRad: degrees(180), width: 20, length: 12, height: 3, inset: 1 }],
    notches: [{ id: 'mark', angleRad: degrees(45), width: 6, depth: 4 }],
    runners: [
      { id: 'round', course: { ring: { radius: { length: 40 }, spokes: 2, startRad: degrees(20) } } },
      {
        id: 'arm',
        course: {
          to: { radius: { length: 60 }, angleRad: degrees(200) },
          path: { arcRad: degrees(10) },
        },
        width: 5,
        endWidth: 4,
        section: { kind: 'V' },
        half: 'lower',
      },
    ],
    gates: [
      {
        placements: ['all'],
        width: 3,
        depth: 1.5,
        endWidth: 2,
        endDepth: 1,
        section: { kind: 'trapezoid', draftRad: degrees(15) },
        half: 'upper',
        land: { length: 2, width: 1.5, depth: 0.8 },
      },
      {
        placements: ['top'],
        from: 'button-1',
        path: { through: [{ radius: { length: 50 }, angleRad: degrees(9) }] },
        slow: { pocket: 4 },
      },
    ],
    vents: [
      { placements: ['top'], joins: true, entry: { named: 'tip' }, path: 'routed' },
      {
        entry: { x: 3, y: -2 },
        path: { through: [{ radius: { length: 70 }, angleRad: degrees(5) }] },
        to: { pocket: 6 },
      },
      { entry: { angleRad: degrees(90) }, path: { arcRad: degrees(-30) } },
    ],
    arrange: {
      pieces: {
        ivy: { count: 6, gate: { named: 'tip' }, worth: 2 },
        button: {
          count: 'as many as fit',
          most: 12,
          place: 'inner',
          sink: { depth: 1 },
          gate: { angleRad: Math.PI / 2 },
        },
      },
      wall: 3,
      ample: 'no end',
      gates: { width: 3, gap: 2, leanRad: expect.closeTo((25 * Math.PI) / 180, 12) },
      symmetry: 'as the counts allow',
      effort: 'little',
      seed: 7,
    },
    ventPins: [
      { diameter: 1.5, half: 'lower', where: { at: { x: 30, y: -20 } } },
      { diameter: 1.5875, half: 'upper', where: { placements: ['top'], place: { x: 2, y: 1 } } },
    ],
    parting: { surface: 'follow', slopeRad: degrees(45), limit: { up: 6, down: 5 }, cell: 0.125 },
    spin: { speedRpm: 400, grade: 'G6.3' },
    cure: {
      temperatureC: 155,
      timeS: 7200,
      heating: 'platens',
      startC: 20,
      cooling: 'in the can',
      filmWM2K: 20,
      coolingConstantS: 7200,
    },
    materials: {
      'vat 240': {
        kind: 'resin',
        heatLimitC: 240,
        loadPa: 1.8e6,
        strengthPa: 50e6,
        densityKgM3: 1200,
        expansionPerK: 5.5e-5,
        poisson: 0.4,
        conductivityWMK: 0.2,
        heatJKgK: 1500,
        source: 'data sheet',
      },
    },
    fixture: { material: 'PETG', relieve: true, compensation: 0.002, bed: { x: 250, y: 210, z: 200 } },
    limits: { cover: 3, falseSeat: 3 },
    severity: { 'cover.thin': { severity: 'warn', reason: 'thin on purpose' } },
  });
});

test('every section the schema knows is in that plan', () => {
  expect(Object.keys(parse(text)).sort()).toEqual(Object.keys(planSchema.shape).sort());
});

test('what a plan does not say is undefined: no default is slipped in', () => {
  const { plan } = readPlan('process: rigid\ndisc: { diameter: 200 }\n', 'plan.yaml');
  expect(JSON.parse(JSON.stringify(plan))).toEqual({
    process: 'rigid',
    // The one thing that follows from how the rest is written.
    units: 'metric',
    disc: {
      diameter: 200,
      at: { file: 'plan.yaml', line: 2, column: 1 },
      written: [{ name: 'diameter', bare: '200', at: { file: 'plan.yaml', line: 2, column: 9 } }],
    },
  });
});

test('the place of any value can be asked for', () => {
  const { source } = readPlan(text, 'plan.yaml');
  const spot = source?.spotAt(['placements', 1, 'ring', 'radius', 'fromRim']);
  const line = text.split('\n')[(spot?.line ?? 0) - 1];
  expect(line.slice((spot?.column ?? 0) - 1)).toMatch(/^30 }/);
  expect(source?.spotAt(['placements', 0, 'nothing'])).toEqual(source?.spotAt(['placements', 0]));
});

test('composed and decomposed letters are one name', () => {
  const decomposed = text.replace('  Schnecke-é:', '  Schnecke-e\u0301:');
  expect(decomposed).not.toBe(text);
  expect(readPlan(decomposed, 'plan.yaml').plan?.placements?.[2].master).toBe('Schnecke-é');
});

// The JSON Schema is read back by zod's own importer, which shares no code with our reader.
test('the JSON Schema for editors takes the plan, and refuses a mistyped one', () => {
  const schema = z.fromJSONSchema(planJsonSchema());
  expect(schema.safeParse(parse(text)).error).toBeUndefined();
  for (const [from, to] of [
    ['sprue:', 'spru:'],
    ['process: rubber', 'process: wood'],
    ['hole: 32', 'hole: [32]'],
    ['fromRim', 'fromRom'],
  ]) {
    expect(schema.safeParse(parse(text.replace(from, to))).success, to).toBe(false);
  }
});

test('every field of the JSON Schema says what it is', () => {
  const bare: string[] = [];
  const look = (schema: z.core.JSONSchema.BaseSchema, path: string): void => {
    for (const [name, field] of Object.entries(schema.properties ?? {})) {
      if (typeof field === 'boolean') continue;
      if (!field.description) bare.push(`${path}.${name}`);
      look(field, `${path}.${name}`);
    }
    for (const next of [schema.items, schema.additionalProperties, ...(schema.anyOf ?? [])]) {
      if (typeof next === 'object' && !Array.isArray(next)) look(next, path);
    }
  };
  look(planJsonSchema(), 'plan');
  expect(bare).toEqual([]);
});
