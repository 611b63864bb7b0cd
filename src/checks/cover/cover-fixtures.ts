import { type Check, check, coveredFixtures } from '../../mold/index.ts';
import { everyProcess } from '../from-mold/index.ts';
import { coverOf } from './cover-of.ts';
import { type HalfThickness, halfThicknessOf } from './half-thickness.ts';

interface FixtureInput {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly depth: number;
  readonly height: number;
  readonly halves: HalfThickness;
}

/** The same for bosses, and for the well under the parting plane (the pouring hole is meant to go through). */
export const coverOfFixtures: Check = check<FixtureInput>({
  id: 'cover-fixtures',
  title: 'Cover over bosses and well',
  follows: true,
  processes: everyProcess,
  units: (mold) => {
    const halves = halfThicknessOf(mold);
    return coveredFixtures(mold).map(({ id, x, y, depth, height }) => ({
      subject: id,
      about: [id],
      input: { id, x, y, depth, height, halves },
    }));
  },
  run: ({ id, x, y, depth, height, halves }) =>
    coverOf(
      {
        id,
        lowest: [x, y, -depth],
        highest: [x, y, height],
        // Round bosses and well the parting surface is kept on the plane.
        deepest: { reach: depth, place: [x, y, -depth] },
        tallest: { reach: height, place: [x, y, height] },
        estimated: false,
      },
      halves,
    ),
});
