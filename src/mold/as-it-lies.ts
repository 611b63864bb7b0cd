import { compose, movedAlong, rotation } from '../geometry/index.ts';
import type { Lie } from './orient-master.ts';

/** A master's size, mm: its box as it lies, before it is turned flat on the disc. `length` is the longer side from above. */
export interface SizeAsItLies {
  readonly length: number;
  readonly width: number;
  readonly height: number;
}

/** Of points in the file's axes; which way it is turned about z changes nothing. */
export function sizeAsItLies(
  positions: ArrayLike<number>,
  { xRad, yRad }: Pick<Lie, 'xRad' | 'yRad'>,
): SizeAsItLies {
  const tipped = compose(rotation('y', yRad), rotation('x', xRad));
  const [x, y, height] = [0, 1, 2].map((axis) => {
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = 0; i < positions.length; i += 3) {
      const at = movedAlong(axis, tipped, positions[i], positions[i + 1], positions[i + 2]);
      least = Math.min(least, at);
      most = Math.max(most, at);
    }
    return most - least;
  });
  return { length: Math.max(x, y), width: Math.min(x, y), height };
}
