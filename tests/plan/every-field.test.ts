import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readFonts } from '../../cli/fonts.ts';
import { shopSheet } from '../../src/export/shop-sheet/sheet.ts';
import type { Report } from '../../src/findings/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { Cache, checkMold, readMold } from '../../src/pipeline/index.ts';
import { planJsonSchema, readPlan } from '../../src/plan/index.ts';
import { faultFolder } from '../faults/check-text.ts';
import { soundText } from '../faults/fault-plans.ts';
import { fieldsOf } from './fields-of-schema.ts';

/** A field's two values, and what else the plan needs for it; `undefined` takes a field out. */
interface Change {
  readonly one: unknown;
  readonly other: unknown;
  readonly base?: 'rubber' | 'rigid';
  readonly with?: Readonly<Record<string, unknown>>;
}
const change = (one: unknown, other: unknown, more: Omit<Change, 'one' | 'other'> = {}): Change => ({
  one,
  other,
  ...more,
});

const rigid = { base: 'rigid' } as const;
const tile = (more: object) => ({
  with: { 'masters.tile': { length: 12, width: 12, above: 2, below: 2, mass: '4.2 g', ...more } },
});
const meshed = (more: object = {}) => ({
  with: { 'masters.tile': { file: 'masters/flag.obj', unit: 'mm', ...more } },
});
const at = (where: object) => ({ with: { 'placements[]': { id: 'one', master: 'tile', ...where } } });
const nearIn = (sectors: object) => ({
  with: { sectors, ...at({ at: { radius: 40, angle: { near: 100, perSector: 1 } } }).with },
});
/** A flag on its edge: thin, and with a contour that the parting surface climbs. */
const tilted = (more: object = {}) => ({
  with: {
    ...meshed({ lie: { turnX: 25 } }).with,
    placements: [{ id: 'one', master: 'tile', at: { radius: 40, angle: 30 } }],
    gates: undefined,
    parting: { surface: 'follow', limit: { up: 6, down: 6 }, cell: 1, ...more },
  },
});
const inSectors = { sectors: { count: 3 } };
const boss = (more: object) => ({ id: 'nut-a', kind: 'cap nut', size: 'M10', ...more });
const bossAt = (more: object, base: 'rubber' | 'rigid' = 'rubber') => ({
  base,
  with: { 'registration.bosses[]': boss(more) },
});
const cone = { kind: 'cone', size: 12, height: 6, at: { radius: 62, angle: 0 } };
const withVents = { with: { vents: [{ placements: ['one'], width: 1, depth: 0.3, half: 'upper' }] } };
/** Two tiles side by side on one radius, whose vents run together toward the rim. */
const crossingVents = {
  with: {
    placements: [
      {
        id: 'one',
        master: 'tile',
        each: [
          { radius: 30, angle: 30 },
          { radius: 60, angle: 32 },
        ],
      },
    ],
    gates: undefined,
    vents: [{ placements: ['one'], width: 3, depth: 0.3, half: 'upper', joins: true }],
  },
};
/** One gate or vent of one placement, that says more of itself. */
const ofList = (section: 'gates' | 'vents', more: object = {}) => ({
  with: { [section]: [{ placements: ['one'], width: 1, ...more }] },
});
const withRunner = (more: object) => ({ with: { runners: [{ id: 'main', ...more }] } });
const withPin = (more: object = {}) => ({
  with: { ventPins: [{ diameter: 1, half: 'upper', placements: ['one'], ...more }] },
});
const toArm = { to: { radius: 45, angle: 80 } };
/** A gate to a place that its master names. */
const named = (place: object) => ({
  with: { 'masters.tile.entry': { tip: place }, gates: [{ placements: ['one'], entry: 'tip' }] },
});
const withSupports = { with: { supports: [{ placements: ['one'] }] } };
const inOven = {
  with: {
    'cure.heating': 'oven',
    'cure.film': '20 W/m2K',
    'cure.time': 200,
    'closing.lid.material': 'steel',
  },
};
/** All fixtures, or both halves, of a material by its sheet. */
const ownMaterial = (base: 'rubber' | 'rigid') => ({
  base,
  with: {
    materials: {
      'vat 240': {
        kind: 'resin',
        heatLimit: 240,
        load: '1.8 MPa',
        strength: '50 MPa',
        density: '1.2 g/cm3',
        expansion: '5.5e-5 /K',
        poisson: 0.4,
        source: 'data sheet, issue 3',
      },
    },
    'fixture.material': 'vat 240',
  },
});
const byPress = {
  with: { 'closing.clamps': undefined, 'closing.press': { force: '300 kN', cure: 'in the press' } },
};
const poured = {
  with: {
    'alloy.latentHeat': '59 kJ/kg',
    'alloy.heatMolten': '240 J/kgK',
    'alloy.heatSolid': '230 J/kgK',
    'alloy.conductivity': '50 W/mK',
    pouring: { fill: '2 s', handling: '2 min', halves: 40, air: 20, film: '15 W/m2K' },
  },
};
const ordered = { with: { order: { pieces: { tile: 60 } } } };
const priced = {
  with: {
    ...poured.with,
    ...ordered.with,
    prices: {
      in: 'crowns',
      metal: '30 per kg',
      rubber: '10 per kg',
      work: '30 per h',
      other: 10,
      moldTime: '5 h',
    },
  },
};
const grooved = {
  with: {
    'can.grooves': { count: 8, width: 6, depth: 2, length: 15 },
    'rubber.mooney': 50,
    'rubber.scorch': '5 min',
  },
};
const ownHalves = {
  base: 'rigid',
  with: {
    alloy: {
      density: '7300 kg/m3',
      pour: 285,
      solidus: 246,
      liquidus: 255,
      latentHeat: '59 kJ/kg',
      heatMolten: '240 J/kgK',
      heatSolid: '230 J/kgK',
      conductivity: '50 W/mK',
    },
    pouring: { halves: 40 },
    materials: {
      own: {
        kind: 'plaster',
        heatLimit: 600,
        strength: '5 MPa',
        density: '1 g/cm3',
        conductivity: '0.2 W/mK',
        heatCapacity: '1500 J/kgK',
        source: 'sheet',
      },
    },
    'fixture.material': 'own',
  },
} as const;
const noCircle = { with: { 'closing.bolts.circle': undefined, 'closing.bolts.outsideRim': 15 } };
const byDisc = { with: { 'disc.thickness': undefined, 'disc.lower': 19.05, 'disc.upper': 19.05 } };

const changes: Readonly<Record<string, Change>> = {
  title: change('Tiles', 'Slates'),
  revision: change(1, 2),
  units: change('metric', 'inch'),
  paper: change('A4', 'Letter'),
  process: change('rubber', 'poured'),
  'disc.diameter': change(160, 165),
  'disc.thickness': change(19.05, 20),
  'disc.lower': change(19.05, 20, byDisc),
  'disc.upper': change(19.05, 20, byDisc),
  'disc.rimChamfer': change(1, 2),
  'disc.label': change('A', 'B'),
  'sectors.count': change(2, 3, nearIn({ count: 2 })),
  'sectors.spacing': change(60, 100, nearIn({ spacing: 60, radius: 40 })),
  'sectors.radius': change(40, 60, nearIn({ spacing: 60, radius: 40 })),
  'sectors.radius.fromRim': change(40, 20, nearIn({ spacing: 60, radius: { fromRim: 40 } })),
  'can.diameter': change(161.5, 162),
  'can.gap': change(1.5, 2, { with: { 'can.diameter': undefined } }),
  'can.depth': change(38.1, 38.2),
  'can.wall': change(10, 11),
  'can.material': change('mild steel', 'cast iron'),
  'can.floor': change(12, 13),
  'can.lid': change(12, 13),
  'can.spacer': change(0.1, 0.2),
  'can.spew': change('open', 'none'),
  'closing.pressure': change('1.5 MPa', '1.6 MPa'),
  'closing.clamps.count': change(4, 5),
  'closing.clamps.force': change('12 kN', '13 kN'),
  'closing.clamps.circle': change(200, 210),
  'closing.clamps.screw': change('M12', 'M16'),
  'closing.bolts.size': change('M10', 'M12'),
  'closing.bolts.grade': change('8.8', '5.8'),
  'closing.bolts.count': change(4, 5),
  'closing.bolts.spacing': change(100, 150, { with: { 'closing.bolts.count': undefined } }),
  'closing.bolts.circle': change(190, 195),
  'closing.bolts.outsideRim': change(15, 20, noCircle),
  'closing.bolts.start': change(0, 20, { with: { 'closing.bolts.circle': 150 } }),
  'closing.bolts.cure': change('left in', 'taken out'),
  'closing.bolts.tension': change('5 kN', '50 kN'),
  'closing.press.force': change('300 kN', '310 kN', byPress),
  'closing.press.cure': change('in the press', 'out', byPress),
  'closing.lid.material': change('steel', '6061-T6'),
  'closing.lid.thickness': change(16, 17),
  'closing.lid.hole': change(20, 30),
  'closing.lid.yield': change('170 MPa', '60 MPa'),
  'machine.maxSpeed': change(1000, 1100),
  'machine.direction': change('clockwise', 'counter-clockwise'),
  'machine.closingForce': change('1.2 kN', '1.3 kN'),
  'machine.plateMass': change('4 kg', '5 kg'),
  'machine.plateDiameter': change(160, 165),
  'machine.plateUnbalance': change('10 g.mm', '11 g.mm'),
  'machine.centering': change(0.01, 0.02),
  'machine.maxUnbalance': change('900 g.mm', '200 g.mm'),
  'rubber.compound': change('filled organic rubber', 'house blend', {
    with: { 'rubber.maxTemperature': undefined },
  }),
  'rubber.density': change('1.15 g/cm3', '1.2 g/cm3'),
  'rubber.t90': change('12 min', '13 min'),
  'rubber.referenceTemperature': change(160, 161),
  'rubber.activationEnergy': change('90 kJ/mol', '91 kJ/mol'),
  'rubber.diffusivity': change('1.1e-7 m2/s', '1.2e-7 m2/s'),
  'rubber.conductivity': change('0.22 W/mK', '0.23 W/mK', inOven),
  'rubber.expansion': change('6.6e-4 /K', '6.7e-4 /K'),
  'rubber.laidIn': change('850 g', '840 g'),
  'rubber.overcure': change('8 h', '1 min'),
  'rubber.cureFrom': change(145, 160),
  'rubber.cureTo': change(170, 150),
  'rubber.maxTemperature': change(290, 300),
  'alloy.name': change('lead-free pewter', 'zamak 3'),
  'alloy.density': change('7300 kg/m3', '7400 kg/m3'),
  'alloy.liquidDensity': change('6900 kg/m3', '7000 kg/m3'),
  'alloy.solidus': change(246, 290, { with: { 'alloy.liquidus': undefined } }),
  'alloy.liquidus': change(255, 256),
  'alloy.pour': change(285, 286),
  'alloy.latentHeat': change('59 kJ/kg', '60 kJ/kg', poured),
  'alloy.heatMolten': change('240 J/kgK', '250 J/kgK', poured),
  'alloy.heatSolid': change('230 J/kgK', '240 J/kgK', poured),
  'alloy.conductivity': change('50 W/mK', '60 W/mK', poured),
  'pouring.fill': change('2 s', '3 s', poured),
  'pouring.openAfter': change('3 min', '1 s', poured),
  'pouring.handling': change('2 min', '3 min', poured),
  'pouring.halves': change(40, 50, poured),
  'pouring.coolest': change(30, 45, poured),
  'pouring.warmest': change(100, 30, poured),
  'pouring.air': change(20, 25, poured),
  'pouring.film': change('15 W/m2K', '20 W/m2K', poured),
  'pouring.contact': change('1000 W/m2K', '2000 W/m2K', poured),
  'order.pieces.*': change(60, 90, ordered),
  'order.misruns': change('1 %', '10 %', ordered),
  'order.loss': change('1 %', '2 %', ordered),
  'prices.in': change('crowns', 'shells', priced),
  'prices.metal': change('30 per kg', '31 per kg', priced),
  'prices.rubber': change('10 per kg', '11 per kg', priced),
  'prices.work': change('30 per h', '31 per h', priced),
  'prices.other': change(10, 11, priced),
  'prices.moldTime': change('5 h', '6 h', priced),
  'prices.run': change(500, 600, priced),
  'machine.stiffness': change('2 kN/mm', '3 kN/mm', {
    with: { 'spin.speed': 700, 'spin.detail': undefined, 'machine.closingForce': '900 N' },
  }),
  'rubber.hardness': change(50, 60),
  'rubber.modulus': change('2 MPa', '3 MPa'),
  'rubber.mooney': change(50, 60, grooved),
  'rubber.scorch': change('5 min', '6 min', grooved),
  'can.grooves.count': change(8, 9, grooved),
  'can.grooves.width': change(6, 7, grooved),
  'can.grooves.depth': change(2, 3, grooved),
  'can.grooves.length': change(15, 16, grooved),
  'materials.*.conductivity': change('0.2 W/mK', '0.3 W/mK', ownHalves),
  'materials.*.heatCapacity': change('1500 J/kgK', '1600 J/kgK', ownHalves),
  'shrink.alloy': change('0.5 %', '1 %'),
  'shrink.rubber': change('0.5 %', '1 %'),
  'sprue.hole': change(20, 21),
  'sprue.draft': change(3, 4),
  'sprue.well.diameter': change(30, 31),
  'sprue.well.depth': change(7, 8),
  'sprue.dome.diameter': change(12, 13),
  'sprue.dome.height': change(3, 3.5),
  'sprue.fillet': change(1, 1.5),
  'sprue.grip': change(0, 5),
  'sprue.flats': change(10, 11, { with: { 'sprue.grip': 10 } }),
  'sprue.vent': change(0.5, 0.6),
  'sprue.pieces': change('one', 'two'),
  'sprue.puller.screw': change('M4', 'M5', { with: { 'sprue.grip': 15 } }),
  'sprue.puller.depth': change(8, 9, { with: { 'sprue.grip': 15, 'sprue.puller.screw': 'M4' } }),
  'sprue.puller.hole': change('tapped', 'insert', {
    with: { 'sprue.grip': 15, 'sprue.puller.screw': 'M4' },
  }),
  'masters.*.entry.*.angle': change(90, 100, named({})),
  'masters.*.entry.*.x': change(6, 5, named({ x: 6, y: 2 })),
  'masters.*.entry.*.y': change(1, 2, named({ x: 6, y: 2 })),
  'masters.*.file': change('masters/flag.obj', 'masters/twice.obj', meshed()),
  'masters.*.unit': change('mm', 'in', meshed()),
  'masters.*.scale': change('100 %', '90 %', meshed()),
  'masters.*.height': change(4, 5, meshed()),
  'masters.*.lie.turnX': change(0, 30, meshed()),
  'masters.*.lie.turnY': change(0, 30, meshed()),
  'masters.*.lie.turnZ': change(0, 30, meshed()),
  'masters.*.outline': change('masters/square.svg', 'masters/oblong.svg', {
    with: { 'masters.tile': { outline: 'masters/square.svg', above: 2, below: 2, mass: '4.2 g' } },
  }),
  'masters.*.length': change(12, 13),
  'masters.*.width': change(12, 13),
  'masters.*.above': change(2, 2.5),
  'masters.*.below': change(2, 2.5),
  'masters.*.mass': change('4.2 g', '4.3 g'),
  'masters.*.material': change('brass', 'PLA'),
  'masters.*.allowance': change('add', 'included', { with: { ...tile({}).with, shrink: { alloy: '2 %' } } }),
  'placements[].id': change('one', 'uno', { with: { gates: undefined } }),
  'placements[].master': change('tile', 'other', { with: { 'masters.other.length': 14 } }),
  'placements[].turn': change(0, 10),
  'placements[].sink': change(2, 1),
  'placements[].leastDisc': change(100, 200, { with: { gates: 'straight' } }),
  'placements[].at.radius': change(40, 41),
  'placements[].at.radius.fromRim': change(40, 41, at({ at: { radius: { fromRim: 40 }, angle: 0 } })),
  'placements[].ring.radius.fromRim': change(40, 41, at({ ring: { radius: { fromRim: 40 }, count: 2 } })),
  'placements[].each[].radius.fromRim': change(40, 41, at({ each: [{ radius: { fromRim: 40 }, angle: 0 }] })),
  'placements[].at.angle': change(30, 31),
  'placements[].at.angle.near': change(0, 100, {
    with: { ...inSectors, ...at({ at: { radius: 40, angle: { near: 0, perSector: 4 } } }).with },
  }),
  'placements[].at.angle.perSector': change(4, 3, {
    with: { ...inSectors, ...at({ at: { radius: 40, angle: { near: 20, perSector: 4 } } }).with },
  }),
  'placements[].ring.count': change(2, 3, at({ ring: { radius: 40, count: 2 } })),
  'placements[].ring.radius': change(40, 41, at({ ring: { radius: 40, count: 2 } })),
  'placements[].ring.start': change(0, 5, at({ ring: { radius: 40, count: 2 } })),
  'placements[].ring.offset': change('10 %', '20 %', at({ ring: { radius: 40, count: 2 } })),
  'placements[].ring.spacing': change(60, 100, at({ ring: { radius: 40 } })),
  'placements[].ring.perSector': change(1, 2, {
    with: { ...inSectors, ...at({ ring: { radius: 40, perSector: 1 } }).with },
  }),
  'placements[].each[].radius': change(40, 41, at({ each: [{ radius: 40, angle: 0 }] })),
  'placements[].each[].angle': change(0, 1, at({ each: [{ radius: 40, angle: 0 }] })),
  'placements[].each[].turn': change(0, 1, at({ each: [{ radius: 40, angle: 0 }] })),
  'registration.clearance': change(0.2, 0.3, rigid),
  'registration.draft': change(1, 2, { base: 'rigid', with: { 'fixture.process': 'FDM' } }),
  'registration.flex': change(0.1, 0.2),
  'registration.bosses[].id': change('nut-a', 'nut-z'),
  'registration.bosses[].kind': change('cone', 'dome', bossAt(cone)),
  'registration.bosses[].size': change('M10', 'M12'),
  'registration.bosses[].turn': change(0, 10),
  'registration.bosses[].clearance': change(0.2, 0.3, { base: 'rigid', with: bossAt(cone).with }),
  'registration.bosses[].height': change(6, 7, bossAt(cone)),
  'registration.bosses[].depth': change(3, 4, bossAt(cone)),
  'registration.bosses[].draft': change(10, 12, bossAt({ ...cone, kind: 'hexagon' })),
  'registration.bosses[].leastDisc': change(100, 200),
  'registration.bosses[].at.radius': change(62, 61),
  'registration.bosses[].at.radius.fromRim': change(
    18,
    19,
    bossAt({ at: { radius: { fromRim: 18 }, angle: 0 } }),
  ),
  'registration.bosses[].ring.radius.fromRim': change(
    18,
    19,
    bossAt({ ring: { radius: { fromRim: 18 }, count: 1 } }),
  ),
  'registration.bosses[].at.angle': change(0, 3),
  'registration.bosses[].at.angle.near': change(0, 100, {
    with: { ...inSectors, ...bossAt({ at: { radius: 62, angle: { near: 0, perSector: 4 } } }).with },
  }),
  'registration.bosses[].at.angle.perSector': change(4, 3, {
    with: { ...inSectors, ...bossAt({ at: { radius: 62, angle: { near: 20, perSector: 4 } } }).with },
  }),
  'registration.bosses[].ring.count': change(1, 2, bossAt({ ring: { radius: 62, count: 1 } })),
  'registration.bosses[].ring.radius': change(62, 61, bossAt({ ring: { radius: 62, count: 1 } })),
  'registration.bosses[].ring.start': change(0, 2, bossAt({ ring: { radius: 62, count: 1 } })),
  'registration.bosses[].ring.offset': change('1 %', '2 %', bossAt({ ring: { radius: 62, count: 1 } })),
  'registration.bosses[].ring.spacing': change(300, 150, bossAt({ ring: { radius: 62 } })),
  'registration.bosses[].ring.perSector': change(1, 2, {
    with: { ...inSectors, ...bossAt({ ring: { radius: 62, perSector: 1 } }).with },
  }),
  'supports[].placements[]': change('one', 'two', withSupports),
  supports: change([{ placements: ['one'] }], undefined),
  'supports[].placements': change('one', 'two', withSupports),
  'supports[].clearance': change(0.2, 0.3, withSupports),
  'supports[].material': change('aluminum', 'PLA', withSupports),
  'tabs[].id': change('tab', 'flap'),
  'tabs[].angle': change(45, 46),
  'tabs[].angle.near': change(0, 100, {
    with: { ...inSectors, 'tabs[].angle': { near: 0, perSector: 4 } },
  }),
  'tabs[].angle.perSector': change(4, 3, {
    with: { ...inSectors, 'tabs[].angle': { near: 20, perSector: 4 } },
  }),
  'tabs[].width': change(12, 13),
  'tabs[].length': change(6, 7),
  'tabs[].height': change(3, 3.5),
  'tabs[].inset': change(1, 1.5),
  'notches[].id': change('notch', 'nick'),
  'notches[].angle': change(315, 316),
  'notches[].angle.near': change(0, 100, {
    with: { ...inSectors, 'notches[].angle': { near: 0, perSector: 4 } },
  }),
  'notches[].angle.perSector': change(4, 3, {
    with: { ...inSectors, 'notches[].angle': { near: 20, perSector: 4 } },
  }),
  'notches[].width': change(5, 6),
  'notches[].depth': change(3, 3.5),
  'gates[].placements[]': change('one', 'two', {
    with: { gates: [{ placements: ['one'], width: 2.5, depth: 1.2, half: 'upper' }] },
  }),
  gates: change('straight', undefined),
  'gates[].placements': change('one', 'two'),
  'gates[].width': change(2.5, 3),
  'gates[].depth': change(1.2, 1.3),
  'gates[].endWidth': change(2.5, 3),
  'gates[].endDepth': change(1.2, 1.3),
  'gates[].entry': change('left', 'right', ofList('gates')),
  'gates[].entry.angle': change(90, 100, ofList('gates')),
  'gates[].entry.x': change(6, 5, ofList('gates', { entry: { x: 6, y: 2 } })),
  'gates[].entry.y': change(1, 2, ofList('gates', { entry: { x: 6, y: 2 } })),
  'gates[].path': change('straight', 'routed', ofList('gates', { entry: 'left' })),
  'gates[].path.arc': change(20, 30, ofList('gates')),
  'gates[].path.slant': change(10, 15, ofList('gates')),
  'gates[].path.through[].angle': change(10, 20, ofList('gates', { path: { through: [{ radius: 30 }] } })),
  'gates[].path.through[].radius': change(30, 32, ofList('gates', { path: { through: [{ angle: 10 }] } })),
  'gates[].path.through[].radius.fromRim': change(
    50,
    48,
    ofList('gates', { path: { through: [{ angle: 10 }] } }),
  ),
  'gates[].from': change(undefined, 'two', {
    with: { gates: [{ placements: ['one'] }, { placements: ['two'] }] },
  }),
  'gates[].slow.pocket': change(4, 5, ofList('gates', { path: { through: [{ radius: 28, angle: -15 }] } })),
  'runners[].id': change('main', 'other', { with: { runners: [{ ring: { radius: 26 } }] } }),
  'runners[].ring.radius': change(26, 27, withRunner({ ring: { spokes: 2 } })),
  'runners[].ring.radius.fromRim': change(50, 51, withRunner({ ring: { spokes: 2 } })),
  'runners[].ring.spokes': change(1, 2, withRunner({ ring: { radius: 26 } })),
  'runners[].ring.start': change(0, 10, withRunner({ ring: { radius: 26 } })),
  'runners[].to.radius': change(26, 27, withRunner({ to: { angle: 80 } })),
  'runners[].to.radius.fromRim': change(50, 51, withRunner({ to: { angle: 80 } })),
  'runners[].to.angle': change(80, 90, withRunner({ to: { radius: 40 } })),
  'runners[].path': change('straight', { arc: 20 }, withRunner(toArm)),
  'runners[].path.arc': change(20, 30, withRunner(toArm)),
  'runners[].path.through[].radius': change(
    30,
    32,
    withRunner({ ...toArm, path: { through: [{ angle: 10 }] } }),
  ),
  'runners[].path.through[].radius.fromRim': change(
    50,
    48,
    withRunner({ ...toArm, path: { through: [{ angle: 10 }] } }),
  ),
  'runners[].path.through[].angle': change(
    10,
    12,
    withRunner({ ...toArm, path: { through: [{ radius: 30 }] } }),
  ),
  'runners[].width': change(4, 5, withRunner(toArm)),
  'runners[].depth': change(2, 2.5, withRunner(toArm)),
  'runners[].endWidth': change(4, 3, withRunner(toArm)),
  'runners[].endDepth': change(2, 1.5, withRunner(toArm)),
  'runners[].section': change('V', 'trapezoid', withRunner(toArm)),
  'runners[].section.trapezoid': change(10, 15, withRunner(toArm)),
  'runners[].half': change('upper', 'lower', withRunner(toArm)),
  'gates[].land.length': change(2, 3, ofList('gates', { land: { width: 0.6 } })),
  'gates[].land.width': change(0.6, 0.8, ofList('gates', { land: { length: 2 } })),
  'gates[].land.depth': change(0.6, 0.8, ofList('gates', { land: { length: 2 } })),
  'gates[].section': change('V', 'trapezoid'),
  'gates[].section.trapezoid': change(10, 15),
  'gates[].half': change('upper', 'lower'),
  'vents[].placements[]': change('one', 'two', withVents),
  vents: change('straight', undefined),
  'vents[].placements': change('one', 'two', withVents),
  'vents[].width': change(1, 1.2, withVents),
  'vents[].depth': change(0.3, 0.4, withVents),
  'vents[].joins': change(true, undefined, crossingVents),
  'vents[].endWidth': change(1, 1.2, withVents),
  'vents[].endDepth': change(0.3, 0.4, withVents),
  'vents[].entry': change('left', 'right', ofList('vents')),
  'vents[].entry.angle': change(90, 100, ofList('vents')),
  'vents[].entry.x': change(6, 5, ofList('vents', { entry: { x: 6, y: 2 } })),
  'vents[].entry.y': change(1, 2, ofList('vents', { entry: { x: 6, y: 2 } })),
  'vents[].path': change('straight', 'routed', ofList('vents', { entry: 'left' })),
  'vents[].path.arc': change(20, 30, ofList('vents')),
  'vents[].path.slant': change(10, 15, ofList('vents')),
  'vents[].path.through[].angle': change(10, 20, ofList('vents', { path: { through: [{ radius: 60 }] } })),
  'vents[].path.through[].radius': change(60, 62, ofList('vents', { path: { through: [{ angle: 10 }] } })),
  'vents[].path.through[].radius.fromRim': change(
    20,
    18,
    ofList('vents', { path: { through: [{ angle: 10 }] } }),
  ),
  'vents[].to': change('two', 'three', {
    with: { vents: [{ placements: ['one'] }, { placements: ['two', 'three'] }] },
  }),
  'vents[].to.pocket': change(4, 5, ofList('vents')),
  'vents[].section': change('V', 'trapezoid', withVents),
  'vents[].section.trapezoid': change(10, 15, withVents),
  'vents[].half': change('upper', 'lower', withVents),
  'ventPins[].diameter': change(1, 1.5, withPin()),
  'ventPins[].half': change('upper', 'lower', withPin()),
  'ventPins[].at.x': change(30, 31, withPin({ placements: undefined, at: { y: 20 } })),
  'ventPins[].at.y': change(20, 21, withPin({ placements: undefined, at: { x: 34 } })),
  'ventPins[].placements': change('one', 'two', withPin()),
  'ventPins[].placements[]': change('one', 'two', withPin({ placements: ['one'] })),
  'ventPins[].place.x': change(1, 2, withPin({ place: { y: 1 } })),
  'ventPins[].place.y': change(1, 2, withPin({ place: { x: 1 } })),
  'parting.surface': change('flat', 'follow', tilted()),
  'parting.slope': change(45, 10, tilted()),
  'parting.cell': change(1, 0.8, tilted()),
  'parting.limit.up': change(6, 0.2, tilted()),
  'parting.limit.down': change(6, 0.2, tilted()),
  'spin.speed': change(480, 490),
  'spin.rimSpeed': change('4 m/s', '5 m/s', { with: { 'spin.speed': undefined } }),
  'spin.shot': change('60 g', '61 g'),
  'spin.detail': change(0.3, 0.2),
  'spin.grade': change('G6.3', 'G16'),
  'cure.temperature': change(155, 156),
  'cure.time': change(75, 76),
  'cure.heating': change('platens', 'oven', { with: { 'cure.film': '20 W/m2K' } }),
  'cure.start': change(20, 21),
  'cure.cooling': change('in the can', undefined),
  'cure.coolingConstant': change(60, 61),
  'cure.contact': change('1000 W/m2K', '500 W/m2K'),
  'cure.film': change('20 W/m2K', '21 W/m2K', inOven),
  'fixture.material': change('aluminum', 'PLA'),
  'fixture.clearance': change(0.2, 0.3),
  'fixture.chordError': change(0.02, 0.03),
  'fixture.compensation': change('0.1 %', '0.2 %'),
  'fixture.holeCompensation': change(0.1, 0.2),
  'fixture.footChamfer': change(0.3, 0.4),
  'fixture.relieve': change(false, true, rigid),
  'fixture.process': change('FDM', 'SLA', rigid),
  'fixture.overhang': change(45, 50, { base: 'rigid', with: { 'fixture.process': 'FDM' } }),
  'fixture.leastFeature': change(0.8, 0.9, { base: 'rigid', with: { 'fixture.process': 'FDM' } }),
  'fixture.make[]': change('plug', 'tab'),
  'fixture.bed': change({ x: 200, y: 200 }, { x: 210, y: 200 }),
  'fixture.bed.x': change(200, 210, { with: { 'fixture.bed': { x: 200, y: 200 } } }),
  'fixture.bed.y': change(200, 210, { with: { 'fixture.bed': { x: 200, y: 200 } } }),
  'fixture.bed.z': change(200, 210, { with: { 'fixture.bed': { x: 200, y: 200 } } }),
  'fixture.bed.margin': change(2, 3, { with: { 'fixture.bed': { x: 200, y: 200 } } }),
  'fixture.jointClearance': change(0.1, 0.2, { with: { 'fixture.bed': { x: 200, y: 200 } } }),
  'fixture.cutter.diameter': change(3, 2, {
    base: 'rigid',
    with: { 'fixture.cutter': { diameter: 3, kind: 'ball' } },
  }),
  'fixture.cutter.kind': change('ball', 'flat', {
    base: 'rigid',
    with: { 'fixture.cutter': { diameter: 3, kind: 'ball' } },
  }),
  'fixture.jig.width': change(20, 21),
  'fixture.jig.thickness': change(5, 6),
  'fixture.plate.thickness': change(5, 6),
  'limits.cover': change(3, 30),
  'limits.wall': change(3, 60),
  'limits.web': change(1, 2, {
    with: {
      placements: [30, 47].map((angle) => ({ master: 'tile', id: `at-${angle}`, at: { radius: 55, angle } })),
      gates: 'straight',
    },
  }),
  'limits.cavityToWell': change(8, 60),
  'limits.cavityToBoss': change(5, 60),
  'limits.cavityToRim': change(10, 60),
  'limits.bossToRim': change(6, 60),
  'limits.falseSeat': change(3, 60),
  'limits.slenderness': change(4, 1, tilted({ surface: 'flat' })),
  'limits.undercut': change('10 %', '0.01 %', tilted({ surface: 'flat' })),
  'limits.mismatch': change(0.5, 0.01),
  'materials.*.kind': change('resin', 'plaster', ownMaterial('rigid')),
  'materials.*.heatLimit': change(240, 120, ownMaterial('rubber')),
  'materials.*.load': change('1.8 MPa', '0.45 MPa', ownMaterial('rubber')),
  'materials.*.strength': change('50 MPa', '60 MPa', ownMaterial('rigid')),
  'materials.*.density': change('1.2 g/cm3', '1.3 g/cm3', ownMaterial('rigid')),
  'materials.*.expansion': change('5.5e-5 /K', '6e-5 /K', ownMaterial('rubber')),
  'materials.*.poisson': change(0.4, 0.3, ownMaterial('rigid')),
  'materials.*.source': change('data sheet, issue 3', 'data sheet, issue 4', ownMaterial('rubber')),
  'severity.*.severity': change('warn', 'stop', {
    with: { severity: { 'pack.flows-out': { severity: 'warn', reason: 'one' } } },
  }),
  'severity.*.reason': change('one', 'other', {
    with: { severity: { 'pack.flows-out': { severity: 'warn', reason: 'one' } } },
  }),
};

/** Why a field of the schema changes nothing here. */
const arranging =
  'read by `arrange`, which writes placements; a build looks for nothing: tests/arrange hold it';
const notShownHere: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    fieldsOf(planJsonSchema())
      .filter((field) => field.startsWith('arrange.'))
      .map((field) => [field, arranging]),
  ),
  'placements[].arranged': arranging,
  'placements[].locked': arranging,
  'masters.*.repair.edge': 'remakes a mesh beyond repair: tests/mesh/repair holds it',
  'limits.coarsening': 'for masters of millions of triangles: tests/pipeline/fit-memory holds it',
  'masters.*.repair.closeHoles': 'closes the holes of an open mesh: tests/mesh/repair holds it',
};

type Tree = Record<string, unknown>;

/** The step into a tree: `[]` is the first entry of a list, `*` the first name of a section. */
function stepInto(tree: Tree, step: string): string {
  return step === '*' ? Object.keys(tree)[0] : step;
}

/** Sets the field at a path, making the sections on the way. */
function put(tree: Tree, path: string, value: unknown): void {
  const steps = path.replaceAll('[]', '.0').split('.');
  let inside = tree;
  for (const [i, step] of steps.entries()) {
    const name = stepInto(inside, step);
    if (i === steps.length - 1) {
      if (value === undefined) delete inside[name];
      else inside[name] = value;
      return;
    }
    const next = inside[name];
    if (typeof next !== 'object' || next === null) inside[name] = steps[i + 1] === '0' ? [] : {};
    inside = inside[name] as Tree;
  }
}

const planOf = (field: string, value: unknown, { base = 'rubber', with: more = {} }: Change): string => {
  const tree = parse(soundText(base)) as Tree;
  for (const [path, extra] of Object.entries(more)) put(tree, path, structuredClone(extra));
  put(tree, field, value);
  return JSON.stringify(tree);
};

const flag = readFileSync(join(faultFolder, 'masters/flag.obj'), 'utf8');
const rectangle = (width: number): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="12mm" viewBox="0 0 ${width} 12"><rect width="${width}" height="12"/></svg>`;
const files: Readonly<Record<string, string>> = {
  'masters/flag.obj': flag,
  'masters/twice.obj': flag.replaceAll(/^v (\S+)/gm, (_, x: string) => `v ${2 * Number(x)}`),
  'masters/square.svg': rectangle(12),
  'masters/oblong.svg': rectangle(14),
};
const fileAt = (path: string): Uint8Array => new TextEncoder().encode(files[path]);

const cache = new Cache(20_000);

async function moldOf(text: string): Promise<{ mold: Mold; report: () => Report }> {
  const kernel = await loadKernel();
  const { mold, findings } = await readMold(
    {
      bytes: new TextEncoder().encode(text),
      name: 'plan.yaml',
      files: async (path) => ({ bytes: fileAt(path), name: basename(path), outside: false }),
    },
    kernel,
    { cache },
  );
  if (!mold) throw new Error(findings.map(({ code, subject }) => `${code} ${subject}`).join(', '));
  return { mold, report: () => checkMold(mold, findings, kernel, { cache }) };
}

/** What the plan says and nothing was made of yet. */
const asWritten = ['bench', 'limits', 'flex', 'severity', 'places', 'materials', 'joins'];
const placed = ({ mold }: { mold: Mold }): string =>
  JSON.stringify(mold, (key, value) => (asWritten.includes(key) ? undefined : value));
const reported = (report: Report): string =>
  JSON.stringify(report, (key, value) => (key === 'at' || key === 'file' ? undefined : value));

const fonts = await readFonts();
const sheetOf = async (mold: Mold, report: Report): Promise<string> => {
  const parts = { mold, report, solids: [], drawings: [], withheld: [] };
  return Buffer.from(await shopSheet({ ...parts, planHash: '0'.repeat(64), version: '0' }, fonts)).toString(
    'latin1',
  );
};

/** Where a change of the field is first seen. */
async function seenIn(field: string, one: Change): Promise<string> {
  const [a, b] = [await moldOf(planOf(field, one.one, one)), await moldOf(planOf(field, one.other, one))];
  if (placed(a) !== placed(b)) return 'mold';
  const [before, after] = [a.report(), b.report()];
  if (reported(before) !== reported(after)) return 'report';
  return (await sheetOf(a.mold, before)) === (await sheetOf(b.mold, after)) ? 'nothing' : 'sheet';
}

describe('every field of the plan', () => {
  test('is changed here, or is named with the reason why not', () => {
    const listed = [...Object.keys(changes), ...Object.keys(notShownHere)].sort();
    expect(listed).toEqual(fieldsOf(planJsonSchema()));
  });

  test.each(Object.entries(changes))('%s changes mold, report or sheet', async (field, one) => {
    expect(await seenIn(field, one)).not.toBe('nothing');
  });

  // Whatever stands behind it, a name with nothing is a fault told at that name, never a default or a left-out field.
  test.each(Object.entries(changes))('%s: ~ is told as empty', (field, one) => {
    const { plan, findings } = readPlan(planOf(field, null, one), 'plan.yaml');
    expect(plan).toBeUndefined();
    expect(findings.map(({ code, values }) => `${code} ${values.which}`)).toContain('plan.missing empty');
  });
});
