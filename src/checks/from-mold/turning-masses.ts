import { determinant, movePoint } from '../../geometry/index.ts';
import {
  type Boss,
  bossLumps,
  channelLump,
  isLoose,
  type Lump,
  type Mold,
  masterOf,
  notchLumps,
  type Placement,
  pinLump,
  roomBetween,
  tabLumps,
} from '../../mold/index.ts';
import type { PointMass } from '../../physics/index.ts';

/** Densities in kg/m3 of what turns. */
export interface Densities {
  readonly half: number;
  readonly alloy: number;
  /** Of loose bosses that are made and not bought. */
  readonly fixture: number;
}

/** Density of cap nuts, kg/m3: steel (EN 1993-1-1; Franssen and Vila Real, Fire Design of Steel Structures, C.1.1). */
const steelKgM3 = 7850;

/** mm3 times kg/m3 is 1e-6 g. */
const weigh = ({ volume, x, y, z }: Lump, densityKgM3: number): PointMass => ({
  massG: volume * densityKgM3 * 1e-6,
  x,
  y,
  z,
});

/** The imprint of a placement in the mold frame: volume by the matrix's determinant, centroid moved by it. */
export function imprintOf(mold: Mold, placement: Placement): Lump {
  const { matrix } = placement;
  const { measures } = masterOf(mold, placement);
  const [x, y, z] = movePoint(matrix, measures.centroid);
  return { volume: measures.volume * Math.abs(determinant(matrix)), x, y, z };
}

/** What a filled cavity weighs more than the half's material it takes the place of. */
export function metalInCavity(mold: Mold, placement: Placement, densities: Densities): PointMass {
  const metal = metalAlone(mold, placement, densities);
  return { ...metal, massG: metal.massG - weigh(imprintOf(mold, placement), densities.half).massG };
}

/** The metal alone that a misrun leaves out: weighed where the plan knows the mass of a casting, else by volume. */
export function metalAlone(mold: Mold, placement: Placement, { alloy }: Densities): PointMass {
  const metal = weigh(imprintOf(mold, placement), alloy);
  const weighed = masterOf(mold, placement).massG;
  return weighed === undefined ? metal : { ...metal, massG: weighed };
}

/**
 * Bosses, tabs, notches and channels as they differ from a plain disc of the half's material; what is round about
 * the axis differs nowhere. Closed forms of the shapes the solids are made by; tab recesses and notches are empty,
 * gates and runners full of metal or, before it is poured, empty, vents empty, bores of nuts as dense as the half.
 */
export function fittings(mold: Mold, densities: Densities, poured: boolean): PointMass[] {
  const { half, alloy, fixture } = densities;
  const { disc, process } = mold;
  return [
    // A boss that is one with the half fills its socket.
    ...setBosses(mold)
      .filter((boss) => isLoose(boss, process))
      .flatMap((boss) => {
        const own = boss.kind === 'cap nut' ? steelKgM3 : fixture;
        return bossLumps(boss).map((lump) => weigh(lump, own - half));
      }),
    ...mold.tabs.flatMap((tab) => tabLumps(tab, disc.radius, process).map((lump) => weigh(lump, -half))),
    ...mold.notches.flatMap((notch) => notchLumps(notch, disc).map((lump) => weigh(lump, -half))),
    ...mold.ventPins.map((pin) => weigh(pinLump(pin, disc), -half)),
    ...mold.channels.map((channel) =>
      weigh(channelLump(channel, mold.parting), channel.kind !== 'vent' && poured ? alloy - half : -half),
    ),
  ];
}

/** Those that can be set: beside the disc, or in another boss, there is none; each has a stop of its own. */
const setBosses = ({ bosses, disc, process }: Mold): Boss[] =>
  bosses.filter(
    (boss, i) =>
      Math.hypot(boss.x, boss.y) < disc.radius &&
      bosses.slice(0, i).every((earlier) => roomBetween(boss, earlier, process) >= 0),
  );
