import { line, mmPerInch, type Path, type Point2, pointsOf, radPerDegree } from '../../geometry/index.ts';
import { inchesText, lettersOf } from '../../lettering/index.ts';
import { holds } from '../plate/index.ts';

const digits = 3;
const ticks = { short: 2, long: 4 } as const;

/** Radius up to which the graduation round the rim of a plate leaves it free, mm. */
export const insideGraduation = (radius: number): number => radius - 2 - ticks.long - 2 * digits;

/**
 * Ticks and numbers that do not run into an opening: round the rim in degrees, along +x in mm and along +y in inches
 * from the axis, from `inner` on.
 */
export function graduations(radius: number, inner: number, openings: readonly (readonly Point2[])[]): Path[] {
  const from = inner + ticks.long;
  const clear = (path: Path): boolean =>
    pointsOf(path).every((point) => !openings.some((ring) => holds(ring, point)));
  return [...degreesRound(radius), ...millimetersAlong(from, radius), ...inchesAlong(from, radius)]
    .filter((group) => group.every(clear))
    .flat();
}

const spoke = (angle: number, from: number, to: number): Path =>
  line([from * Math.cos(angle), from * Math.sin(angle)], [to * Math.cos(angle), to * Math.sin(angle)]);

const degreesRound = (radius: number): Path[][] =>
  Array.from({ length: 72 }, (_, i) => {
    const long = i % 2 === 0 ? ticks.long : ticks.short;
    return [
      spoke(i * 5 * radPerDegree, radius - 1 - long, radius - 1),
      ...(i % 6 === 0 ? degreesAt(i * 5, radius) : []),
    ];
  });

const degreesAt = (degrees: number, radius: number): Path[] => {
  const far = radius - 2 - ticks.long - digits;
  const angle = degrees * radPerDegree;
  return lettersAt(String(degrees), [far * Math.cos(angle), far * Math.sin(angle)], angle - Math.PI / 2);
};

const millimetersAlong = (inner: number, radius: number): Path[][] =>
  marksAlong(inner, radius, 5).map((s) => {
    const long = s % 10 === 0 ? ticks.long : ticks.short;
    return [
      line([s, -long / 2], [s, long / 2]),
      ...(s % 20 === 0 ? lettersAt(String(s), [s, -long / 2 - 4]) : []),
    ];
  });

const inchesAlong = (inner: number, radius: number): Path[][] =>
  marksAlong(inner, radius, mmPerInch / 4).map((s) => {
    const whole = Math.abs(s / mmPerInch - Math.round(s / mmPerInch)) < 1e-9;
    const long = whole ? ticks.long : ticks.short;
    return [
      line([-long / 2, s], [long / 2, s]),
      ...(whole ? lettersAt(inchesText(Math.round(s / mmPerInch)), [long / 2 + 6, s - digits / 2]) : []),
    ];
  });

const marksAlong = (inner: number, radius: number, step: number): number[] =>
  Array.from({ length: Math.floor(radius / step) }, (_, i) => (i + 1) * step).filter(
    (s) => s > inner && s < radius - ticks.long - 2 * digits - 2,
  );

const lettersAt = (words: string, at: Point2, turnRad = 0): Path[] =>
  lettersOf({ words, at, height: digits, turnRad, anchor: 'middle' });
