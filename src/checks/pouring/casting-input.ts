import type { TriangleMesh } from '../../geometry/index.ts';
import { thickestSpot } from '../../mesh/index.ts';
import { type Memoize, type Mold, makeAlways, masterOf, soundSprue } from '../../mold/index.ts';
import {
  type Chill,
  chvorinovTime,
  effusivityOf,
  type Freezing,
  heatToSet,
  settingTime,
} from '../../physics/index.ts';
import { metalInWell, metalOf, type ShotInput, shotInput } from '../turning/index.ts';
import { type HalfHeat, halfHeat } from './half-heat.ts';
import { metalHeat } from './metal-heat.ts';

type Pouring = NonNullable<Mold['bench']['pouring']>;

interface Placed {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly scale: number;
  /** V / A of the imprint, mm. */
  readonly modulus: number;
}

/** What is poured, into what, and how one pour follows another. */
export interface CastingInput {
  readonly metal?: Freezing;
  readonly half?: HalfHeat;
  /** What is left out of metal and halves. */
  readonly missing: readonly string[];
  readonly rigid: boolean;
  readonly placed: readonly Placed[];
  readonly pouring: Pouring;
  readonly shot: ShotInput;
  readonly radius: number;
  /** Mean thickness of a half, mm. */
  readonly thickness: number;
  readonly estimated: boolean;
}

/** Asked where the plan says how it is poured. */
export const asksOfPours = (mold: Mold): boolean =>
  mold.bench.pouring !== undefined &&
  mold.placements.length > 0 &&
  (mold.sprue === undefined || soundSprue(mold) !== undefined);

export function castingInput(mold: Mold): CastingInput {
  const { disc, placements, bench, process } = mold;
  const [{ metal, missing: ofMetal }, { half, missing: ofHalf }] = [metalHeat(mold), halfHeat(mold)];
  const placed = placements.map(({ id, master, scale }) => {
    const { mesh, measures } = masterOf(mold, { id, master });
    return { id, mesh, scale, modulus: (measures.volume / measures.area) * scale };
  });
  return {
    ...(metal && { metal }),
    ...(half && { half }),
    missing: [...ofMetal, ...ofHalf],
    rigid: process === 'rigid',
    placed,
    pouring: bench.pouring ?? {},
    shot: shotInput(mold),
    radius: disc.radius,
    thickness: (disc.lower + disc.upper) / 2,
    estimated: (half?.estimated ?? false) || placements.some(({ estimated }) => estimated),
  };
}

/** Metal, halves and the places that set last. Lengths in mm. */
export interface Castings {
  readonly metal: Freezing;
  readonly half: HalfHeat;
  readonly spots: readonly { readonly id: string; readonly modulus: number; readonly half: number }[];
  /** V / A of what stands in the well, over its floor and wall; left out, the shot is not known. */
  readonly well?: number;
}

export function castingsOf(input: CastingInput, memoize: Memoize = makeAlways): Castings | undefined {
  const { metal, half, placed, shot } = input;
  if (!metal || !half) return undefined;
  const turning = metalOf(shot, memoize);
  const well = turning && metalInWell(turning);
  return {
    metal,
    half,
    spots: placed.map(({ id, mesh, scale, modulus }) => ({
      id,
      modulus,
      half: memoize('thickest spot', { mesh }, () => thickestSpot(mesh)).radius * scale,
    })),
    ...(well !== undefined && { well }),
  };
}

export const chillAt = (
  { half, pouring }: CastingInput & { half: HalfHeat },
  temperatureC: number,
): Chill => ({
  effusivity: effusivityOf(half.conductivityWMK, half.diffusivityM2S),
  temperatureC,
  ...(pouring.contactWM2K !== undefined && { contactWM2K: pouring.contactWM2K }),
});

/** When the last of it is solid, in halves of that temperature, s. */
export function solidAfter(input: CastingInput, castings: Castings, temperatureC: number): number {
  const { metal, half, spots, well } = castings;
  const chill = chillAt({ ...input, half }, temperatureC);
  const times = spots.map((spot) => settingTime(metal, spot.half, chill));
  return Math.max(...times, well === undefined ? 0 : wellTime(metal, well, chill));
}

/** The metal in the well, cooled from below and at its wall; what the half resists is all that is counted. */
export const wellTime = (metal: Freezing, modulus: number, chill: Chill): number =>
  chvorinovTime(metal, modulus, chill);

/** Heat in J/kg that the metal leaves in the halves, cooled to their own temperature at the worst. */
export const heatLeft = (metal: Freezing, halvesC: number): number =>
  heatToSet(metal) + metal.solidJKgK * Math.max(0, metal.solidusC - halvesC);
