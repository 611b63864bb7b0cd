import type { Finding } from '../../findings/index.ts';
import type { Path, Point2 } from '../../geometry/index.ts';
import { type Labeled, leastLetters } from '../making/index.ts';
import { boxOf, type FreeSpace } from './free-space.ts';
import { engravedIn, fuller, type LabelWish, letteredIn, shortestLabels, unlabeled } from './plate-labels.ts';
import { layOutTitle, titlePlaceOnPlate } from './plate-title.ts';

/** A round plate, and the words it is titled with, the most wanted first. */
export interface LetteredPlate extends Labeled {
  readonly radius: number;
  readonly words: readonly string[];
}

export interface PlateLettering {
  readonly engraved: readonly Path[];
  readonly lettered: readonly (readonly Point2[])[];
  readonly findings: readonly Finding[];
}

/** Heights of a capital that are tried for labels: what is well read, and what can just be read. Common practice, mm. */
const heights = [leastLetters, 3] as const;

/**
 * Labels beside the openings of a round plate, and the plan's name and revision: the shortest of all first, so that
 * none is crowded out, then as much more as there is room for; small where large ones do not all come out in full.
 * `space` gives the space there is, anew each time.
 */
export function letterPlate(
  plate: LetteredPlate,
  wishes: readonly LabelWish[],
  space: () => FreeSpace,
): PlateLettering {
  const [large, small] = heights.map((height) => () => setAt(plate, wishes, space(), height));
  const first = large();
  const { lettering } = first.full ? first : small();
  return lettering;
}

function setAt(
  plate: LetteredPlate,
  wishes: readonly LabelWish[],
  space: FreeSpace,
  height: number,
): { lettering: PlateLettering; full: boolean } {
  const shortest = shortestLabels(wishes, space, height);
  const title = layOutTitle(plate, plate.words, titlePlaceOnPlate(plate.radius, space));
  for (const corners of title.lettered) space.take(boxOf(corners));
  // Once more, since what one label leaves another may use.
  const labels = fuller(fuller(shortest, wishes), wishes);
  const missing = wishes.filter(({ id }) => !labels.laid.has(id)).map(({ id }) => id);
  const findings = [...unlabeled(plate, missing), ...title.findings];
  return {
    lettering: {
      engraved: [...engravedIn(labels), ...title.engraved],
      lettered: [...letteredIn(labels), ...title.lettered],
      findings,
    },
    full: findings.length === 0 && [...labels.laid.values()].every(({ text }) => text === 0),
  };
}
