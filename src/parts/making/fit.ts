import type { Fixture } from '../../mold/index.ts';
import { heatRow, mediumTolerance } from '../../tables/index.ts';

/** What of the way fixtures are made a flat one depends on. */
export type FlatFixture = Pick<
  Fixture,
  'material' | 'clearance' | 'chordError' | 'holeCompensation' | 'footChamfer'
>;

export const flatFixture = ({
  material,
  clearance,
  chordError,
  holeCompensation,
  footChamfer,
}: Fixture): FlatFixture => ({
  material,
  clearance,
  chordError,
  ...(holeCompensation !== undefined && { holeCompensation }),
  ...(footChamfer !== undefined && { footChamfer }),
});

type Made = Pick<Fixture, 'material' | 'clearance'>;

/**
 * How much (mm) wider than the thing it takes an opening of a fixture is drawn: machined of metal, by what a shop may
 * be off (ISO 2768-1, class m), so that the tightest one made still takes it; printed, by the plan's clearance on
 * both sides.
 */
export const openingFit = ({ material, clearance }: Made, size: number): number =>
  heatRow(material)?.kind === 'metal' ? mediumTolerance(size) : 2 * clearance;

/** The same for an opening closed all round, which comes out tighter still by what the plan makes up for. */
export const holeFit = (fixture: Made & Pick<Fixture, 'holeCompensation'>, size: number): number =>
  openingFit(fixture, size) + (fixture.holeCompensation ?? 0);
