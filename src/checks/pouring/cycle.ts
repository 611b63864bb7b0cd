import { type Poured, whenEven } from '../../physics/index.ts';
import { type CastingInput, type Castings, heatLeft, solidAfter } from './casting-input.ts';

/** How long one pour takes and how warm the halves are before each, once they change no more. */
export interface Cycled {
  readonly cycleS: number;
  readonly halvesC: number;
  /** What the shortest cycle would make of the halves, where the plan allows them less. */
  readonly held?: { readonly cycleS: number; readonly halvesC: number };
}

const mm2PerM2 = 1e6;
/** No pour is looked for that takes longer, s. */
const longest = 172_800;

/** The halves as they are poured into, the heat of a shot (g) shared alike by both over the whole parting plane. */
export function pouredOf(input: CastingInput, { metal, half }: Castings, shotG: number): Poured | undefined {
  const { filmWM2K, airC, halvesC } = input.pouring;
  if (filmWM2K === undefined || airC === undefined || halvesC === undefined) return undefined;
  const area = (2 * Math.PI * input.radius ** 2) / mm2PerM2;
  return {
    thickness: input.thickness / 1000,
    conductivityWMK: half.conductivityWMK,
    diffusivityM2S: half.diffusivityM2S,
    filmWM2K,
    airC,
    startC: halvesC,
    pulseJM2: ((shotG / 1000) * heatLeft(metal, Math.min(airC, halvesC))) / area,
  };
}

/** The least cycle from which on something holds, s, to a tenth; what holds once goes on to hold. */
function leastCycle(holds: (cycleS: number) => boolean): number | undefined {
  let [low, high] = [0, longest];
  if (!holds(high)) return undefined;
  while (high - low > 0.1) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * The hotter the halves, the longer the metal takes to set, and the longer that takes, the cooler are the halves: there
 * is one cycle that agrees with itself. It is lengthened until the halves stay as cool as the plan wants them.
 */
export function cycleOf(input: CastingInput, castings: Castings, poured: Poured): Cycled | undefined {
  const { handlingS, openAfterS = 0, warmestC } = input.pouring;
  if (handlingS === undefined) return undefined;
  const at = (cycleS: number): number => whenEven(poured, cycleS);
  const shortest = leastCycle(
    (cycleS) => cycleS >= handlingS + Math.max(openAfterS, solidAfter(input, castings, at(cycleS))),
  );
  if (shortest === undefined) return undefined;
  const cool = warmestC === undefined ? shortest : leastCycle((cycleS) => at(cycleS) <= warmestC);
  if (cool === undefined) return undefined;
  if (cool <= shortest) return { cycleS: shortest, halvesC: at(shortest) };
  return { cycleS: cool, halvesC: at(cool), held: { cycleS: shortest, halvesC: at(shortest) } };
}
