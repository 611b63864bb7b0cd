import type { Mold } from '../mold/index.ts';
import type { Forecasts, ToldAir } from '../trials/index.ts';
import { type CavityForecast, type CavityRoom, cavityRoom } from './cavity.ts';
import { leastBond, mostBond, usualAngle } from './lock.ts';
import { cavityOf, channelsOf, conditionsOf, isParted, sweptIn } from './of-mold.ts';
import { leastPocket } from './pockets.ts';
import type { SweptChannel } from './ports.ts';

/** Bond numbers that trials may tell apart, evenly over the range. */
const steps = 15;
const bonds = Array.from({ length: steps }, (_, k) => leastBond + ((mostBond - leastBond) * k) / (steps - 1));

interface Known {
  readonly air: ToldAir;
  readonly byBond: readonly number[];
}

/** As `stepTold`, in one go. */
export function toldAir(mold: Mold): Forecasts {
  const steps = stepTold(mold);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * What is forecast of each cavity with its gates and vents as they are, to be held against trials: the worst air over the
 * range, and the air under each Bond number, all else as usual. Cavities without a gate, and molds of which too little is
 * known to fill them, are left out. Like cavities are filled once. Gives
 * after each cavity how many are done, for it may take long.
 */
export function* stepTold(mold: Mold): Generator<number, Forecasts> {
  const conditions = conditionsOf(mold);
  const found = new Map<string, Known>();
  const alike = new Map<string, Known | undefined>();
  let done = 0;
  for (const placement of conditions ? mold.placements : []) {
    if (!conditions || !isParted(mold, placement)) continue;
    const { problem } = cavityOf(mold, placement, conditions);
    const { mesh: _, ...rest } = problem;
    const key = JSON.stringify([placement.master, placement.scale, rest]);
    const channels = sweptIn(mold, placement, channelsOf(mold, placement.id));
    const known = alike.has(key) ? alike.get(key) : knownOf(cavityRoom(problem), channels);
    alike.set(key, known);
    if (known) found.set(placement.id, known);
    yield ++done;
  }
  return {
    air: new Map([...found].map(([id, { air }]) => [id, air])),
    byBond: { bonds, air: new Map([...found].map(([id, { byBond }]) => [id, byBond])) },
  };
}

function knownOf(room: CavityRoom, channels: readonly SweptChannel[]): Known | undefined {
  const forecast = room.forecast(channels);
  if (!forecast) return undefined;
  const byBond = bonds.map((bond) =>
    (room.air(channels, { bond, angle: usualAngle }) ?? []).reduce((sum, { volume }) => sum + volume, 0),
  );
  return { air: worstAir(forecast), byBond };
}

/** The most over the range, under a gate or elsewhere. */
function worstAir({ places, gates }: CavityForecast): ToldAir {
  const elsewhere = places.map(
    ({ stays, volumes }): ToldAir => ({
      told: stays,
      volume: Math.max(...volumes),
      frees: 'vent',
    }),
  );
  const underGates = gates
    .filter(({ opening, band }) => opening < 1 && band[1] >= leastPocket)
    .map(
      ({ band: [least, most], opensAt }): ToldAir => ({
        told: least >= leastPocket ? 'all' : 'some',
        volume: most,
        frees: 'gate',
        width: opensAt,
      }),
    );
  return [...elsewhere, ...underGates].reduce<ToldAir>(
    (worst, one) => (one.volume > worst.volume ? one : worst),
    { told: 'none', volume: 0 },
  );
}
