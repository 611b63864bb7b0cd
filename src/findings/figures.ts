import { canFigures } from './figures/can.ts';
import type { FigureEntry } from './figures/entry.ts';
import { fillFigures } from './figures/fill.ts';
import { orderFigures } from './figures/order.ts';
import { pouringFigures } from './figures/pouring.ts';
import { shapeFigures } from './figures/shape.ts';
import { turningFigures } from './figures/turning.ts';

export type { FigureEntry } from './figures/entry.ts';

/**
 * Every figure a report may hold, one entry each. A figure of another name is a type error; each needs a row in
 * `tests/published/outside/` that says what outside the project its computation is held to.
 */
export const figureCatalogue = {
  ...shapeFigures,
  ...canFigures,
  ...turningFigures,
  ...fillFigures,
  ...pouringFigures,
  ...orderFigures,
} as const satisfies Record<string, FigureEntry>;

export type FigureName = keyof typeof figureCatalogue;

type Family = FigureName extends infer Name
  ? Name extends `${infer First}.${string}`
    ? First
    : never
  : never;

/** The heading over the figures whose names begin alike, in the order the checks are read. */
export const figureHeadings = {
  depth: 'Thickness and cover',
  height: 'Thickness and cover',
  cover: 'Thickness and cover',
  walls: 'Walls',
  registration: 'Registration',
  undercut: 'Release',
  draft: 'Release',
  support: 'Support',
  balance: 'Balance',
  shot: 'Pressure and shot',
  pressure: 'Pressure and shot',
  speed: 'Pressure and shot',
  flash: 'Pressure and shot',
  squeeze: 'Pressure and shot',
  closing: 'Closing the can',
  pack: 'Closing the can',
  ledger: 'Closing the can',
  spew: 'Closing the can',
  cure: 'Cure',
  heat: 'Heat and materials',
  setting: 'Setting and pours',
  pours: 'Setting and pours',
  order: 'Order',
  cost: 'Cost',
  spin: 'Spin',
  fill: 'Filling',
  fit: 'Fit',
} as const satisfies Record<Family, string>;

/** The heading a figure stands under. */
export const headingOf = (name: FigureName): string =>
  figureHeadings[name.slice(0, name.indexOf('.')) as Family];
