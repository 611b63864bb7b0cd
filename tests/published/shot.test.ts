import { describe, expect, it } from 'vitest';
import { pressedOf } from '../../src/checks/turning/pressed-area.ts';
import { pressure } from '../../src/checks/turning/pressure.ts';
import { speedBand } from '../../src/checks/turning/speed-band.ts';
import type { ReportPart } from '../../src/findings/index.ts';
import { translation } from '../../src/geometry/index.ts';
import { type Mold, metalWell } from '../../src/mold/index.ts';
import {
  forceApart,
  ringPressed,
  stripPressed,
  surfaceHeight,
  surfaceRise,
  trianglePressed,
  volumeUnder,
} from '../../src/physics/index.ts';
import { emptyMold, figureOf, runCheck, smallSprue, withMaster } from '../checks/small-mold.ts';
import { box, single } from '../revolved-solids.ts';
import { straightChannel } from '../straight-channel.ts';

const omega = (400 * Math.PI) / 30;

/** omega^2 / 2 g by hand, 1/mm. */
const riseAt = (speed: number): number => ((speed * Math.PI) / 30) ** 2 / (2 * 9806.65);

/** Which of the limits the highest speed is. */
const byOf = ({ figures }: Required<ReportPart>) => figures.find(({ name }) => name === 'speed.most')?.by;

describe('free surface of a turning liquid', () => {
  // h = omega^2 r^2 / 2 g: 36 mm at 400 rpm and 20 mm.
  it('rises 36 mm at 20 mm and 400 rpm', () => {
    expect(surfaceRise(400) * 20 ** 2).toBeCloseTo(35.8, 1);
  });

  // The paraboloid in a cylinder takes half of its cylinder: V = pi R^2 (z0 + rise R^2 / 2).
  it('in a cylinder holds half of what it rises', () => {
    const tub = { radius: 30, corners: [], floorAt: () => 0, ceilingAt: () => 1000 };
    const rise = surfaceRise(400);
    const volume = Math.PI * 900 * (10 + (rise * 900) / 2);
    expect(volumeUnder(tub, 10, rise) / volume).toBeCloseTo(1, 9);
    expect(surfaceHeight(tub, volume, rise)).toBeCloseTo(10, 5);
  });

  // Dry out to 28 mm: z0 = -k 28^2 = -3945 mm, V = pi k (R^2 - 28^2)^2 / 2.
  it('far under the floor at 3000 rpm', () => {
    const tub = { radius: 30, corners: [28], floorAt: () => 0, ceilingAt: () => 1000 };
    const volume = (Math.PI * riseAt(3000) * (900 - 784) ** 2) / 2;
    expect(surfaceHeight(tub, volume, surfaceRise(3000))).toBeCloseTo(-3945.17, 1);
  });

  // Steps at 4.3, 9.7 and 17 mm: rings of 10, 9, 8 and 7 mm.
  it('over a floor in steps, its corners in any order', () => {
    const floorAt = (r: number): number => [4.3, 9.7, 17].filter((step) => r > step).length;
    const stepped = { radius: 30, corners: [17, 4.3, 9.7], floorAt, ceilingAt: () => 1000 };
    const squares = 10 * 4.3 ** 2 + 9 * (9.7 ** 2 - 4.3 ** 2) + 8 * (17 ** 2 - 9.7 ** 2) + 7 * (900 - 289);
    expect(volumeUnder(stepped, 10, 0)).toBeCloseTo(Math.PI * squares, 6);
  });

  // Frustum of the well and cap of its dome, V = pi h (3 a^2 + h^2) / 6, both below the plane at rest.
  it('at rest fills the well to its closed form', () => {
    const slope = Math.tan(smallSprue.draftRad) * 6;
    const floor = 15 - slope;
    const frustum = ((Math.PI * 6) / 3) * (15 ** 2 + 15 * floor + floor ** 2);
    const dome = ((Math.PI * 3) / 6) * (3 * 36 + 9);
    expect(volumeUnder(metalWell(smallSprue, 12.7), 0, 0) / (frustum - dome)).toBeCloseTo(1, 6);
  });
});

describe('force that opens the halves', () => {
  // Ring from a to b under rho omega^2 (r^2 - a^2) / 2: pi rho omega^2 (b^2 - a^2)^2 / 4.
  it('on a ring is the integral of its pressure', () => {
    const force = forceApart(ringPressed(20, 90), 7280, 400, 400);
    expect(force).toBeCloseTo((Math.PI * 7280 * omega ** 2 * (0.09 ** 2 - 0.02 ** 2) ** 2) / 4, 6);
  });

  // Rectangle b x h at (x, y): integral of r^2 = A (x^2 + y^2 + (b^2 + h^2) / 12).
  it('on triangles and strips rests on the second moment of a rectangle', () => {
    const one = trianglePressed(70, -5, 90, -5, 90, 5);
    const two = trianglePressed(70, -5, 90, 5, 70, 5);
    const whole = 200 * (80 ** 2 + (20 ** 2 + 10 ** 2) / 12);
    expect(one.area + two.area).toBeCloseTo(200, 9);
    expect(one.secondMoment + two.secondMoment).toBeCloseTo(whole, 6);
    expect(stripPressed({ at: [70, 0], width: 10 }, { at: [90, 0], width: 10 }).secondMoment).toBeCloseTo(
      whole - (200 * 100) / 12,
      6,
    );
  });
});

// Rectangle 20 x 10 at (30, 40), and a strip 6 wide along x = 40 from y = 10 to 30, its width left out.
describe('areas off the axes', () => {
  it('of a rectangle in two triangles', () => {
    const halves = [trianglePressed(20, 35, 40, 35, 40, 45), trianglePressed(20, 35, 40, 45, 20, 45)];
    const sum = halves.reduce((all, { secondMoment }) => all + secondMoment, 0);
    expect(sum).toBeCloseTo(200 * (2500 + 500 / 12), 6);
    expect(trianglePressed(40, 45, 20, 45, 20, 35).secondMoment).toBeCloseTo(halves[1].secondMoment, 6);
  });
  it('of a strip', () => {
    const strip = stripPressed({ at: [40, 10], width: 6 }, { at: [40, 30], width: 6 });
    expect(strip.area).toBeCloseTo(120, 9);
    expect(strip.secondMoment).toBeCloseTo(120 * (1600 + 400 + 400 / 12), 6);
  });
});

describe('shot and pressure of one cavity', () => {
  const density = 7300;
  const brick = single(box([-5, -5, -5], [5, 5, 5]));
  const sprue = { ...smallSprue, draftRad: 0, domeRadius: 0, domeHeight: 0, fillet: 0 };
  const { height, radius } = { height: 6, radius: 15 };
  /** With walls upright and the floor partly dry: V = pi (h^2 / 2 k + (R^2 - r_s^2) h), k the rise. */
  const inWell = (surface: number, speed: number): number =>
    Math.PI * (height ** 2 / (2 * riseAt(speed)) + (radius ** 2 - surface ** 2) * height);
  const shotG = (1000 + inWell(12, 400)) * density * 1e-6;
  const bench: Mold['bench'] = {
    alloy: { name: 'pewter type 2', liquidKgM3: density },
    machine: { closingForceN: 30, maxSpeedRpm: 9000 },
    spin: { speedRpm: 400, shotKg: shotG / 1000, detail: 0.02 },
  };
  const mold = withMaster({ ...emptyMold, sprue, bench }, 'brick', brick, translation(80, 0, 0));
  const pressureAt = (r: number, surface: number, speed: number): number =>
    (density * ((speed * Math.PI) / 30) ** 2 * (r ** 2 - surface ** 2) * 1e-6) / 2;
  /** The brick, its middle r^2 in place of the integral, and the ring of the well the metal stands under. */
  const force = (surface: number, speed: number): number => {
    const load = (density * ((speed * Math.PI) / 30) ** 2 * 1e-12) / 2;
    const onBrick = 100 * (6400 + 200 / 12 - surface ** 2);
    return load * (onBrick + (Math.PI / 2) * (radius ** 2 - surface ** 2) ** 2);
  };

  it('found from the shot and the shape of the well', async () => {
    const report = await runCheck(pressure, mold);
    const value = (name: string, subject = 'spin') => figureOf(report, name, subject);
    expect(value('shot.casting', 'brick-1')).toBeCloseTo(7.3, 9);
    expect(value('pressure.surface')).toBeCloseTo(12, 3);
    expect(value('pressure.inner', 'brick-1')).toBeCloseTo(pressureAt(75, 12, 400), 0);
    expect(value('pressure.outer', 'brick-1')).toBeCloseTo(pressureAt(Math.hypot(85, 5), 12, 400), 0);
    const times = (omega ** 2 * Math.hypot(0.085, 0.005)) / 9.80665;
    expect(value('pressure.gFactor', 'brick-1')).toBeCloseTo(times, 6);
    const detail = (2 * 0.55 * 1000) / pressureAt(75, 12, 400);
    expect(value('pressure.detail', 'brick-1')).toBeCloseTo(detail, 6);
    expect(value('pressure.opening')).toBeCloseTo(force(12, 400), 3);
    expect(report.findings).toEqual([]);
  });

  // Gate of half an ellipse, pi / 4 x 2 x 1 mm2 over 60 mm; seen from above 2 mm wide from 15 to 75 mm.
  it('a gate takes metal, and the metal in it opens the halves', async () => {
    const gate = straightChannel({
      id: 'gate-brick-1',
      kind: 'gate',
      placement: 'brick-1',
      from: [14, 0],
      to: [76, 0],
      width: 2,
      depth: 1,
      half: 'upper',
    });
    const volume = (Math.PI / 2) * 60;
    const shotKg = (shotG + volume * density * 1e-6) / 1000;
    const gated = { ...mold, channels: [gate], bench: { ...bench, spin: { ...bench.spin, shotKg } } };
    const report = await runCheck(pressure, gated);
    const least = 1000 + volume + inWell(15, 400);
    const most = 1000 + volume + Math.PI * (100 * (12.7 - 50 * riseAt(400) + height) + 125 * height);
    expect(figureOf(report, 'shot.least', 'spin')).toBeCloseTo(least * density * 1e-6, 4);
    expect(figureOf(report, 'shot.most', 'spin')).toBeCloseTo(most * density * 1e-6, 4);
    expect(figureOf(report, 'pressure.surface', 'spin')).toBeCloseTo(12, 3);
    const onGate = ((density * omega ** 2 * 1e-12) / 2) * ((2 * (75 ** 3 - 15 ** 3)) / 3 - 144 * 120);
    expect(figureOf(report, 'pressure.opening', 'spin')).toBeCloseTo(force(12, 400) + onGate, 3);
  });

  // The same rho omega^2 (r^2 - r_s^2) / 2 from the axis, which is dry, to the outermost corner.
  it('is plotted against the radius', async () => {
    const [{ name, x, y }] = (await runCheck(pressure, mold)).series;
    expect(name).toBe('pressure.radius');
    expect([x.values[0], y.values[0]]).toEqual([0, 0]);
    expect(x.values.at(-1)).toBeCloseTo(Math.hypot(85, 5), 5);
    for (const [i, radius] of x.values.entries())
      expect(y.values[i]).toBeCloseTo(Math.max(0, pressureAt(radius, 12, 400)), 0);
  });

  it('least and largest shot', async () => {
    const report = await runCheck(pressure, mold);
    const rise = riseAt(400);
    const least = 1000 + inWell(15, 400);
    const most = 1000 + Math.PI * (100 * (12.7 - 50 * rise + height) + 125 * height);
    expect(figureOf(report, 'shot.least', 'spin')).toBeCloseTo(least * density * 1e-6, 4);
    expect(figureOf(report, 'shot.most', 'spin')).toBeCloseTo(most * density * 1e-6, 4);
  });

  // The middle of two closed forms; a quarter of the way is the least and a quarter of what lies between.
  it.each([0, 0.25, 1])('a shot by share, %d of the way', async (shotShare) => {
    const { shotKg: _, ...spin } = bench.spin ?? {};
    const report = await runCheck(pressure, {
      ...mold,
      bench: { ...bench, spin: { ...spin, shotShare } },
    });
    const least = 1000 + inWell(15, 400);
    const most = 1000 + Math.PI * (100 * (12.7 - 50 * riseAt(400) + height) + 125 * height);
    const shot = (least + shotShare * (most - least)) * density * 1e-6;
    expect(figureOf(report, 'shot.poured', 'spin')).toBeCloseTo(shot, 4);
    expect(report.findings).toEqual([]);
  });

  it('band of speeds, from the detail that fills to the force that opens', async () => {
    const report = await runCheck(speedBand, mold);
    const surface = (speed: number): number =>
      Math.sqrt(12 ** 2 + (inWell(12, speed) - inWell(12, 400)) / (Math.PI * height));
    const least = figureOf(report, 'speed.least', 'spin');
    expect((2 * 0.55 * 1000) / pressureAt(75, surface(least), least) / 0.02).toBeCloseTo(1, 2);
    const most = figureOf(report, 'speed.most', 'spin');
    expect((1.25 * force(surface(most), most)) / 30).toBeCloseTo(1, 2);
    expect(least).toBeGreaterThan(400);
    expect(report.findings.map(({ code }) => code)).toEqual(['shot.slow']);
    expect(byOf(report)).toBe('speed.opens');
  });

  // All metal under the surface through the edge of the hole: V = 1000 + pi (100 (12.7 - 50 k + 6) + 125 x 6), put in
  // backward: k of the shot, and n = 30 / pi sqrt(2 g k).
  it('the lowest limit counts and is named: a shot that climbs out first', async () => {
    const shotKg = 0.05;
    const k = (12.7 + 6 + 7.5 - ((shotKg * 1e9) / density - 1000) / (100 * Math.PI)) / 50;
    const spills = (30 / Math.PI) * Math.sqrt(2 * 9.80665 * 1000 * k);
    const strong = { ...bench, machine: { closingForceN: 3000, maxSpeedRpm: 1000 } };
    const report = await runCheck(speedBand, {
      ...mold,
      bench: { ...strong, spin: { speedRpm: 300, shotKg } },
    });
    expect(Math.abs(figureOf(report, 'speed.spills', 'spin') - spills)).toBeLessThan(0.6);
    expect(figureOf(report, 'speed.machine', 'spin')).toBe(1000);
    expect(figureOf(report, 'speed.most', 'spin')).toBe(figureOf(report, 'speed.spills', 'spin'));
    expect(spills).toBeLessThan(700);
    expect(byOf(report)).toBe('speed.spills');
    // It spills already: the speed that would do is said all the same.
    const faster = await runCheck(speedBand, {
      ...mold,
      bench: { ...strong, spin: { speedRpm: 900, shotKg } },
    });
    expect(figureOf(faster, 'speed.most', 'spin')).toBe(figureOf(report, 'speed.most', 'spin'));
  });

  it('of the machine alone, where nothing else is known; nothing where nothing is', async () => {
    const report = await runCheck(speedBand, { ...mold, bench: { machine: { maxSpeedRpm: 820 } } });
    expect(figureOf(report, 'speed.most', 'spin')).toBe(820);
    expect(byOf(report)).toBe('speed.machine');
    expect((await runCheck(speedBand, { ...mold, bench: {} })).figures).toEqual([]);
  });

  it('says what is wrong with shot and force', async () => {
    const said = async (spin: object, machine: object = {}) => {
      const changed = {
        ...bench,
        spin: { ...bench.spin, ...spin },
        machine: { ...bench.machine, ...machine },
      };
      const { findings } = await runCheck(pressure, { ...mold, bench: changed });
      return findings.map(({ code, severity }) => [code, severity]);
    };
    expect(await said({ detail: 1 })).toEqual([]);
    expect(await said({ shotKg: 0.007 })).toEqual([['shot.short', 'warn']]);
    expect(await said({ shotKg: 0.09 })).toEqual([['shot.spill', 'stop']]);
    expect(await said({ detail: 1 }, { closingForceN: 4 })).toEqual([['shot.flash', 'stop']]);
  });

  it('asks for what the plan leaves out', async () => {
    const { findings, figures } = await runCheck(pressure, { ...mold, bench: {} });
    expect(findings.map(({ code }) => code)).toEqual(['shot.not-checked']);
    expect(findings[0].values).toEqual({
      missing: ['alloy.density', 'alloy.liquidDensity', 'spin.speed', 'spin.shot', 'machine.closingForce'],
    });
    expect(figures).toEqual([]);
  });

  it('sees the same area however fine the mesh', () => {
    const seen = pressedOf({ id: 'brick', mesh: brick, matrix: translation(80, 0, 0) });
    expect(seen.pressed.area).toBeCloseTo(100, 6);
    expect(seen.inner).toBeCloseTo(75, 6);
    expect(seen.outer).toBeCloseTo(Math.hypot(85, 5), 6);
  });
});
