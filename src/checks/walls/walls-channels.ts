import type { Check } from '../../mold/index.ts';
import { channelsOf } from './fixtures.ts';
import { wallsTo } from './measure-wall.ts';

/** Cavities against the gates and vents of others; their own open into them. */
export const wallsToChannels: Check = wallsTo({
  id: 'walls-channels',
  title: 'Walls between cavities and channels',
  follows: false,
  fixtures: channelsOf,
});
