const mm2PerM2 = 1e6;

/** Force in N that a pressure (Pa) on a round face of the given diameter (mm) pushes it open with: p pi d^2 / 4. */
export const openingForce = (pressurePa: number, diameter: number): number =>
  (pressurePa * Math.PI * diameter ** 2) / 4 / mm2PerM2;

/** Fewest holders, each good for `each` N, that together bear `reserve` times a force (N): ceil(reserve F / each). */
export const holdersNeeded = (force: number, each: number, reserve: number): number =>
  Math.ceil((reserve * force) / each);

/** Fewest places on a circle (its diameter, mm), evenly spread, no farther apart along it than `spacing`. */
export const placesNeeded = (diameter: number, spacing: number): number =>
  // A hair less keeps a spacing that rounding put just past a whole number of them.
  Math.ceil((Math.PI * diameter) / spacing - 1e-9);

/** Volume of a round can, mm3, from its inner diameter and the depth left for the halves, mm. */
export const canVolume = (diameter: number, depth: number): number => (Math.PI * diameter ** 2 * depth) / 4;

/** A volume after heating by `kelvin`: V (1 + beta dT), beta the volume expansion per kelvin (cubic expansion). */
export const heatedVolume = (volume: number, expansionPerK: number, kelvin: number): number =>
  volume * (1 + expansionPerK * kelvin);

/**
 * Pressure in Pa that would press a volume too large by `excess` into a space that does not give: K dV / V, the
 * definition of the bulk modulus K (Pa), taken as constant. Only to show that no can holds it.
 */
export const lockPressure = (bulkModulusPa: number, excess: number, volume: number): number =>
  excess > 0 ? (bulkModulusPa * excess) / volume : 0;
