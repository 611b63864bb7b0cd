import type { Stage } from '../stage.ts';
import { channelHandles } from './channel-handles.ts';
import { channels } from './channels.ts';
import { clashes } from './clashes.ts';
import { cutPlane } from './cut-plane.ts';
import { dimensions } from './dimensions.ts';
import { drag } from './drag.ts';
import { fillOrder } from './fill-order.ts';
import { heavySide } from './heavy-side.ts';
import { looks } from './looks.ts';
import { masters } from './masters.ts';
import { nameTag } from './name-tag.ts';
import { names } from './names.ts';
import { pockets } from './pockets.ts';
import { poses } from './poses.ts';
import { snapshot } from './snapshot.ts';
import { solids } from './solids.ts';
import { trialMarks } from './trial-marks.ts';
import { views } from './views.ts';
import { wallColors } from './wall-colors.ts';

/** Something in the picture that follows the store; gives back how to take it away again. */
export type Layer = (stage: Stage) => () => void;

/** Every layer, in the order they are put in. A new one is one file and one line here. */
export const layers: readonly Layer[] = [
  solids,
  masters,
  channels,
  looks,
  poses,
  drag,
  cutPlane,
  wallColors,
  fillOrder,
  pockets,
  channelHandles,
  dimensions,
  clashes,
  heavySide,
  trialMarks,
  names,
  nameTag,
  snapshot,
  views,
];
