import {
  type Figure,
  type FigureName,
  type Finding,
  makeFigure,
  type ReportPart,
} from '../../findings/index.ts';
import type { Vec3 } from '../../geometry/index.ts';
import { coverSource, type HalfThickness, leastOf, tooThin } from './half-thickness.ts';

/** What stands into both halves: the z of its lowest and highest point, and where they are (mold frame, mm). */
export interface Reaching {
  readonly id: string;
  readonly lowest: Vec3;
  readonly highest: Vec3;
  /** The points farthest under and over the parting surface where they are, and how far. */
  readonly deepest: Local;
  readonly tallest: Local;
  readonly estimated: boolean;
}

interface Local {
  readonly reach: number;
  readonly place: Vec3;
}

const overSurface = 'extent of the placed mesh over the parting surface where it is';

export function coverOf(thing: Reaching, halves: HalfThickness): ReportPart {
  const below = Math.max(0, -thing.lowest[2]);
  const above = Math.max(0, thing.highest[2]);
  const { id, estimated, deepest, tallest } = thing;
  const local = (name: FigureName, { reach, place }: Local): Figure =>
    makeFigure(name, { subject: id, value: reach, source: overSurface, estimated, places: [place] });
  const lower = sideOf('lower', thing, thing.lowest, below, halves);
  const upper = sideOf('upper', thing, thing.highest, above, halves);
  return {
    findings: [...lower.findings, ...upper.findings],
    figures: [
      local('depth.below', deepest),
      ...lower.figures,
      local('height.above', tallest),
      ...upper.figures,
    ],
  };
}

function sideOf(
  half: 'lower' | 'upper',
  { id, estimated }: Reaching,
  place: Vec3,
  reach: number,
  halves: HalfThickness,
): { findings: Finding[]; figures: Figure[] } {
  const cover = halves[half] - reach;
  const figures = [
    makeFigure(`cover.${half}`, {
      subject: id,
      value: cover,
      source: coverSource,
      estimated,
      places: [place],
    }),
  ];
  // What only touches the plane has nothing in this half to cover.
  if (reach === 0 || cover >= leastOf(halves)) return { findings: [], figures };
  const one = tooThin('thing', half, { cover, reach, subject: id, place }, halves);
  return { findings: [one], figures };
}
