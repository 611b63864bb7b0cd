import type { Check } from '../../mold/index.ts';
import { notchesOf, tabsOf } from './fixtures.ts';
import { wallsTo } from './measure-wall.ts';

/** Cavities against tabs and notches. */
export const wallsToTabs: Check = wallsTo({
  id: 'walls-tabs',
  title: 'Walls between cavities, tabs and notches',
  follows: true,
  fixtures: (mold) => [...tabsOf(mold), ...notchesOf(mold)],
});
