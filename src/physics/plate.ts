/**
 * A lid on a can: a round plate held along a circle so that it can tilt there, with or without a hole in its middle.
 * What lies beyond that circle is left out: it would only help. Lengths in mm, modulus in Pa.
 */
export interface Plate {
  /** Of the circle it is held on. */
  readonly radius: number;
  /** Out to where the pressure acts, at most `radius`. */
  readonly pressed: number;
  /** Radius of the hole, less than `pressed`; 0 for none. */
  readonly hole: number;
  readonly thickness: number;
  readonly poisson: number;
}

/*
 * Roark's Formulas for Stress and Strain, table 11.2, outer edge simply supported: cases 1a (line load) and 2a (even
 * load from a radius outward) for a free inner edge, 10a for a plate without a hole. L are its loading functions of
 * x = r0 / a. An even load over part of the plate is the difference of two. Thin plates, small bows.
 */
const xxLn = (x: number): number => (x > 0 ? x * x * Math.log(1 / x) : 0);

const l3 = (x: number): number => (x / 4) * ((x * x + 1) * Math.log(1 / x) + x * x - 1);
const l9 = (nu: number, x: number): number =>
  x * (((1 + nu) / 2) * Math.log(1 / x) + ((1 - nu) / 4) * (1 - x * x));
const l11 = (x: number): number => (1 + 4 * x * x - 5 * x ** 4 - 4 * (2 + x * x) * xxLn(x)) / 64;
const l17 = (nu: number, x: number): number =>
  (1 - ((1 - nu) / 4) * (1 - x ** 4) - x * x - (1 + nu) * xxLn(x)) / 4;

/** Radii as shares of the circle it is held on. */
const shares = ({ radius, pressed, hole }: Plate) => ({ hole: hole / radius, pressed: pressed / radius });

/** What the pressure turns the plate with, over q a^3 / D: even load to `pressed`, and the plug in the hole on its edge. */
function loading(plate: Plate): number {
  const { poisson: nu } = plate;
  const { hole, pressed } = shares(plate);
  const even = l17(nu, hole) - l17(nu, pressed);
  return hole > 0 ? even + (hole / 2) * l9(nu, hole) : even;
}

/**
 * Greatest bending stress, Pa, under an even pressure in Pa: round the edge of the hole, or in the middle. What closes
 * the hole hands the pressure on it to its edge. A hole however small doubles the stress of the middle.
 */
export function plateStress(pressurePa: number, plate: Plate): number {
  const { radius, thickness } = plate;
  const { hole } = shares(plate);
  const raised = hole > 0 ? 2 / (1 - hole * hole) : 1;
  return (6 * pressurePa * radius ** 2 * loading(plate) * raised) / thickness ** 2;
}

/** Bow of the middle or of the hole's edge, mm; D = E t^3 / (12 (1 - nu^2)). Same source. */
export function plateBow(pressurePa: number, plate: Plate & { readonly modulusPa: number }): number {
  const { radius, thickness, poisson: nu, modulusPa } = plate;
  const { hole, pressed } = shares(plate);
  const stiffness = (modulusPa * thickness ** 3) / (12 * (1 - nu ** 2));
  // C1 / C7 of the table, by which the slope at the inner edge bows it.
  const tilt = (1 / (1 - nu ** 2)) * ((1 - nu) / 2 + ((1 + nu) * xxLn(hole)) / (1 - hole * hole));
  const line = hole > 0 ? (hole / 2) * l3(hole) : 0;
  return (pressurePa * radius ** 4 * (tilt * loading(plate) - (l11(hole) - l11(pressed)) - line)) / stiffness;
}
