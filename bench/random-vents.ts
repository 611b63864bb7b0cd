import { cavityRoom } from '../src/fill/cavity.ts';
import type { Proposal } from '../src/fill/index.ts';
import { cavityOf, channelsOf, conditionsOf, sweptIn } from '../src/fill/of-mold.ts';
import { airIn, stubAt } from '../src/fill/propose/trial.ts';
import type { DrawAnew, Mold, Placement } from '../src/mold/index.ts';

/** Numbers from 0 to 1 that look like chance, the same for the same seed (Park and Miller 1988). */
function chance(seed: number): () => number {
  let state = 48271 * (seed + 1);
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/**
 * Air (mm3, median over seeds) that stays in a cavity with the gates proposed for it and, in the place of its vents, as many at
 * places of the outline taken by chance. They need no way and no walls, so they are better off than any that are cut.
 */
export function airWithRandomVents(
  mold: Mold,
  anew: DrawAnew,
  { placements: [id], gate, ways }: Proposal,
  seeds: number,
): number {
  const conditions = conditionsOf(mold);
  const one = mold.placements.find((placement) => placement.id === id);
  if (!conditions || !one) throw new Error(`${id} is not filled`);
  const room = cavityRoom(cavityOf(mold, one, conditions).problem);
  const gates = gate ? [gate.way.channels[0]] : channelsOf(mold, id).filter(({ kind }) => kind === 'gate');
  const more = ways.filter(({ way }) => way.sort === 'gate').map(({ way }) => way.channels[0]);
  const vents = ways.filter(({ way }) => way.sort === 'vent');
  const airs = Array.from({ length: seeds }, (_, seed) => {
    const next = chance(seed);
    const stubs = vents.map(({ way }) =>
      stubAt({ kind: [one] }, 'vent', way.listed, onOutline(anew, one, next())),
    );
    return airIn(room.air(sweptIn(mold, one, [...gates, ...more, ...stubs])) ?? []);
  });
  airs.sort((a, b) => a - b);
  return (airs[Math.floor((seeds - 1) / 2)] + airs[Math.ceil((seeds - 1) / 2)]) / 2;
}

/** The place of the outline that a share of the turn round its middle looks at. */
function onOutline(anew: DrawAnew, { id, x, y, reach }: Placement, share: number): readonly [number, number] {
  const [c, s] = [Math.cos(2 * Math.PI * share), Math.sin(2 * Math.PI * share)];
  const there = anew.onOutline(id, [x + 2 * reach * c, y + 2 * reach * s]);
  if (!there) throw new Error(`${id} has no outline`);
  return there.at;
}
