/** Exact: international yard and pound agreement, 1959. */
export const mmPerInch = 25.4;

export const radPerDegree = Math.PI / 180;
export const degreesPerRad = 180 / Math.PI;

// Multiplied first: by the factors above 3 degrees, and others, differ in their last bit.
export const toRadians = (degrees: number): number => (degrees * Math.PI) / 180;
export const toDegrees = (rad: number): number => (rad * 180) / Math.PI;

/** A length as a reduced fraction of an inch, to the nearest `finest`th and at least one of them: `1 1/2`. */
export function inchFraction(mm: number, finest: number): string {
  let num = Math.max(1, Math.round((mm / mmPerInch) * finest));
  let den = finest;
  while (num % 2 === 0 && den > 1) {
    num /= 2;
    den /= 2;
  }
  const whole = Math.floor(num / den);
  const rest = num % den;
  const parts = [whole > 0 ? String(whole) : '', rest > 0 ? `${rest}/${den}` : ''];
  return parts.filter((part) => part !== '').join(' ');
}
