import type { Check } from '../../mold/index.ts';
import { wellOf } from './fixtures.ts';
import { wallsTo } from './measure-wall.ts';

/** Cavities against well and pouring hole; a gate may cross this wall. */
export const wallsToWell: Check = wallsTo({
  id: 'walls-well',
  title: 'Walls between cavities and the well',
  follows: true,
  fixtures: wellOf,
});
