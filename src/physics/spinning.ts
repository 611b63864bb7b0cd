/** Standard gravity, m/s2 (ISO 80000-3). */
export const standardGravity = 9.80665;

/** Angular speed in rad/s of a speed in rpm. */
export const angularSpeed = (speedRpm: number): number => (speedRpm * Math.PI) / 30;

/** Speed of the rim in m/s: omega r, r in mm. */
export const rimSpeed = (speedRpm: number, radius: number): number =>
  (angularSpeed(speedRpm) * radius) / 1000;

/** The speed in rpm at which a rim of `radius` mm has that speed in m/s: v / r. */
export const speedForRim = (metersPerSecond: number, radius: number): number =>
  ((30 / Math.PI) * metersPerSecond * 1000) / radius;

/**
 * How many times gravity presses outward at a radius in mm: omega^2 r / g (Groover, Fundamentals of Modern
 * Manufacturing, ch. 11, which takes the outside of the casting).
 */
export const gFactor = (speedRpm: number, radius: number, gravity = standardGravity): number =>
  (angularSpeed(speedRpm) ** 2 * radius) / 1000 / gravity;

/** The speed in rpm at which a radius in mm has that many times gravity. */
export const speedForGFactor = (times: number, radius: number, gravity = standardGravity): number =>
  (30 / Math.PI) * Math.sqrt((gravity * times * 1000) / radius);

/**
 * Pressure in Pa of a liquid turning with the mold at a radius of `radius` mm, whose free surface has the radius
 * `surfaceRadius`: rho omega^2 (r^2 - r_s^2) / 2 (rotating liquid in rigid motion, any text on fluid mechanics).
 * `surfaceRadiusSquared` in mm2; below 0 the liquid also covers the axis, and the axis has pressure.
 */
export const turningPressure = (
  densityKgM3: number,
  speedRpm: number,
  radius: number,
  surfaceRadiusSquared: number,
): number =>
  Math.max(0, (densityKgM3 * angularSpeed(speedRpm) ** 2 * (radius ** 2 - surfaceRadiusSquared) * 1e-6) / 2);

/** Radius in mm of the finest rounded detail that metal is pressed into: R = 2 gamma / p (Young and Laplace). */
export const finestDetail = (tensionNM: number, pressurePa: number): number =>
  (2 * tensionNM * 1000) / pressurePa;
