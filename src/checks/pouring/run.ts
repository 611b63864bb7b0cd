import { alloyDensity, type Memoize, type Mold } from '../../mold/index.ts';
import { metalOf, type ShotInput, shotInput, shotOf } from '../turning/index.ts';
import { asksOfPours, type CastingInput, castingInput, castingsOf } from './casting-input.ts';
import { cycleOf, pouredOf } from './cycle.ts';

/** A master and what one good casting of it weighs, g. */
interface Kind {
  readonly master: string;
  readonly perPour: number;
  readonly castingG?: number;
  readonly wanted: number;
}

/** What a run of pours is counted from. */
export interface RunInput {
  readonly kinds: readonly Kind[];
  readonly misruns: number;
  readonly loss: number;
  readonly shot: ShotInput;
  /** Where the plan says how one pour follows another. */
  readonly casting?: CastingInput;
  readonly estimated: boolean;
}

export function runInput(mold: Mold): RunInput {
  const { masters, placements, bench } = mold;
  const { pieces = {}, misruns = 0, loss = 0 } = bench.order ?? {};
  const shot = shotInput(mold);
  const density = alloyDensity(mold)?.value;
  const kinds = masters.map(({ id: master }): Kind => {
    const placed = placements.filter((one) => one.master === master);
    const cavity = shot.cavities.find(({ id }) => id === placed[0]?.id);
    const byVolume = cavity && density !== undefined ? cavity.castingMm3 * density * 1e-6 : undefined;
    const castingG = cavity?.castingG ?? byVolume;
    return {
      master,
      perPour: placed.length,
      wanted: pieces[master] ?? 0,
      ...(castingG !== undefined && { castingG }),
    };
  });
  return {
    kinds,
    misruns,
    loss,
    shot,
    ...(asksOfPours(mold) && { casting: castingInput(mold) }),
    estimated: shot.estimated,
  };
}

/** Shot (g) and time from pour to pour (s), as far as they are known. */
export function paceOf(
  { shot, casting }: RunInput,
  memoize: Memoize | undefined,
): { readonly shotG?: number; readonly cycleS?: number } {
  const turning = metalOf(shot, memoize);
  const shotG = turning && shotOf(turning);
  if (shotG === undefined) return {};
  const castings = casting && castingsOf(casting, memoize);
  const poured = castings && pouredOf(casting, castings, shotG);
  const cycled = poured && cycleOf(casting, castings, poured);
  return { shotG, ...(cycled && { cycleS: cycled.cycleS }) };
}

/** The castings of one pour together, g; undefined where one of them is not known. */
export function castingsG(kinds: readonly Kind[]): number | undefined {
  let sum = 0;
  for (const { perPour, castingG } of kinds) {
    if (perPour === 0) continue;
    if (castingG === undefined) return undefined;
    sum += perPour * castingG;
  }
  return sum;
}
