import type { Check } from '../../mold/index.ts';
import { bossesOf } from './fixtures.ts';
import { wallsTo } from './measure-wall.ts';

/** Cavities against bosses, a nut's hexagon counted as the round through its corners; in rigid halves against what is cut for them. */
export const wallsToBosses: Check = wallsTo({
  id: 'walls-bosses',
  title: 'Walls between cavities and bosses',
  follows: true,
  fixtures: bossesOf,
});
