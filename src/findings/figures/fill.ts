import type { FigureEntry } from './entry.ts';

/** How cavities fill. */
export const fillFigures = {
  'fill.air': {
    label: 'air that stays',
    unit: 'mm3',
    means: 'Air that stays in a filled cavity, pressed together, under the usual assumptions.',
  },
  'fill.airMost': {
    label: 'air that may stay',
    unit: 'mm3',
    means: 'The most that stays at each place over the range of what is not known.',
  },
  'fill.band': {
    label: 'air under the gate, at most',
    unit: 'mm3',
    means: 'Air that may stay under a gate that has shut; 0 where it stays open to air.',
  },
  'fill.time': {
    label: 'time to fill',
    unit: 's',
    means: 'Time in which metal fills the cavity through its gates.',
  },
  'fill.cell': {
    label: 'cells of the forecast',
    unit: 'mm',
    means: 'Edge of the cells the cavity is filled in; what is thinner is not seen.',
  },
} as const satisfies Record<string, FigureEntry>;
