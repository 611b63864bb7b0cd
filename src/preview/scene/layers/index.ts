import type { Stage } from '../stage.ts';
import { channels } from './channels.ts';
import { cutPlane } from './cut-plane.ts';
import { hand } from './hand.ts';
import { looks } from './looks.ts';
import { masters } from './masters.ts';
import { names } from './names.ts';
import { poses } from './poses.ts';
import { solids } from './solids.ts';
import { views } from './views.ts';

/** Something in the picture that follows the store; gives back how to take it away again. */
export type Layer = (stage: Stage) => () => void;

/** Every layer, in the order they are put in. A new one is one file and one line here. */
export const layers: readonly Layer[] = [
  solids,
  masters,
  channels,
  looks,
  poses,
  hand,
  cutPlane,
  names,
  views,
];
