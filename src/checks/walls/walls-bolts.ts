import type { Check } from '../../mold/index.ts';
import { boltsOf } from './fixtures.ts';
import { wallsTo } from './measure-wall.ts';

/** Cavities against those bolts of the can that go through the disc. */
export const wallsToBolts: Check = wallsTo({
  id: 'walls-bolts',
  title: 'Walls between cavities and bolts',
  follows: true,
  processes: ['rubber'],
  fixtures: boltsOf,
});
