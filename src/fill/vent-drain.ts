import { finding } from '../findings/index.ts';
import {
  type Channel,
  type Check,
  check,
  isDrawn,
  legsOf,
  type Mold,
  openRun,
  type Station,
} from '../mold/index.ts';
import { finestDetail, outflowSpeed, sharpEdged } from '../physics/index.ts';
import type { Conditions } from './conditions.ts';
import { halfEllipse } from './gate.ts';
import { conditionsOf } from './of-mold.ts';
import { omegaSquared, pressureUnder } from './potential.ts';

interface DrainInput {
  readonly id: string;
  readonly placement: string;
  /** From the cavity to the rim. */
  readonly way: readonly Station[];
  readonly conditions: Omit<Conditions, 'flow'>;
}

/**
 * Whether metal that has come to a vent is still hot when it comes out at the rim. Told only where superheat alone carries it
 * so far, so that it is sure to run out; it may run on some way while it sets. Not told where the plan does not say how the
 * metal cools.
 */
export const ventDrain: Check = check<DrainInput>({
  id: 'vent-drain',
  title: 'Vents that let metal out',
  follows: false,
  processes: ['rubber', 'rigid'],
  units: (mold) => {
    const conditions = conditionsOf(mold);
    if (conditions?.superheatS === undefined) return [];
    return mold.channels.flatMap((channel) => {
      const { id, kind, placement } = channel;
      const way = kind === 'vent' && isDrawn(channel) ? wayOut(mold, channel) : undefined;
      if (!way) return [];
      return [{ subject: id, about: [placement], input: { id, placement, way, conditions } }];
    });
  },
  run: ({ id, placement, way, conditions }) => {
    if (isTooThinToEnter(way, conditions)) return {};
    const limit = legsOf(way).reduce((sum, { length }) => sum + length, 0);
    const measured = limit / cooledAlong(way, conditions);
    if (measured <= limit) return {};
    const deepest = Math.max(...way.map(({ depth }) => depth));
    const values = { measured, limit, placement, depth: deepest * thinnerBy(way, conditions) };
    return { findings: [finding('fill.vent-drains', { subject: id, values })] };
  },
});

/** To the rim, by the vents it leads into; undefined where it ends blind. */
function wayOut({ channels, disc }: Mold, vent: Channel): Station[] | undefined {
  const way = openRun(vent);
  const passed = new Set([vent]);
  for (let one = vent; one.opensInto !== undefined; ) {
    const next = channels.find(({ id }) => id === one.opensInto);
    if (!next || passed.has(next)) return undefined;
    passed.add(next);
    way.push(...fromNearest(openRun(next), way[way.length - 1]));
    one = next;
  }
  const { at, width } = way[way.length - 1];
  return Math.hypot(...at) >= disc.radius - width ? way : undefined;
}

function fromNearest(run: readonly Station[], { at }: Station): Station[] {
  const far = run.map((one) => Math.hypot(one.at[0] - at[0], one.at[1] - at[1]));
  return run.slice(far.indexOf(Math.min(...far)));
}

/** Metal is not pressed into a gap thinner than 2 gamma / p. */
function isTooThinToEnter(
  way: readonly Station[],
  { field, metal, wellLevel }: DrainInput['conditions'],
): boolean {
  return way.some(({ at: [x, y], depth }) => {
    const pressure = pressureUnder(field, metal.densityKgM3, -wellLevel * wellLevel, -x * x - y * y);
    return !(pressure > 0) || depth < finestDetail(metal.tensionNM, pressure);
  });
}

/**
 * Share of its superheat that metal has lost when it is through: time in each piece over how long superheat lasts in its
 * section, volume over surface squared. As fast as out of the cavity into the vent's beginning (Torricelli in the turning frame).
 */
function cooledAlong(way: readonly Station[], conditions: DrainInput['conditions'], thinner = 1): number {
  const { field, wellLevel, superheatS = 0 } = conditions;
  const out = outflowSpeed(Math.sqrt(omegaSquared(field)), Math.hypot(...way[0].at), wellLevel);
  const speed = sharpEdged * out * 1000;
  return legsOf(way).reduce((sum, { from, to, length }) => {
    const { area, girth } = halfEllipse((from.width + to.width) / 2, (thinner * (from.depth + to.depth)) / 2);
    return sum + length / speed / (superheatS * (area / girth) ** 2);
  }, 0);
}

/** The factor on its depth at which its superheat is just gone at the rim. */
function thinnerBy(way: readonly Station[], conditions: DrainInput['conditions']): number {
  let [least, most] = [0, 1];
  for (let step = 0; step < 30; step++) {
    const middle = (least + most) / 2;
    if (cooledAlong(way, conditions, middle) > 1) least = middle;
    else most = middle;
  }
  return least;
}
