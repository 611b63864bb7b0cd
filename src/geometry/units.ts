/** Exact: international yard and pound agreement, 1959. */
export const mmPerInch = 25.4;

export const radPerDegree = Math.PI / 180;
export const degreesPerRad = 180 / Math.PI;

// Multiplied first: by the factors above 3 degrees, and others, differ in their last bit.
export const toRadians = (degrees: number): number => (degrees * Math.PI) / 180;
export const toDegrees = (rad: number): number => (rad * 180) / Math.PI;
