import type { FigureEntry } from './entry.ts';

/** One pour after another: setting, heat of the halves. */
export const pouringFigures = {
  'setting.thickest': {
    label: 'thickest spot',
    unit: 'mm',
    means: 'Across the largest ball that lies inside the casting: what sets last.',
  },
  'setting.chvorinov': {
    label: 'sets as a whole after',
    unit: 's',
    means: 'Time until a casting has set, by its volume over its surface.',
  },
  'setting.time': {
    label: 'thickest spot sets after',
    unit: 's',
    means: 'Time until a casting has set in its thickest spot.',
  },
  'setting.well': {
    label: 'metal in the well sets after',
    unit: 's',
    means: 'Time until the metal left in the well has set.',
  },
  'setting.open': {
    label: 'may be opened after',
    unit: 's',
    means: 'Time after the pour until all the metal has set, in halves as warm as at the first pour.',
  },
  'pours.cycle': {
    label: 'from pour to pour',
    unit: 's',
    means:
      'Shortest time from one pour to the next that lets all the metal set and keeps the halves cool enough.',
  },
  'pours.perHour': {
    label: 'pours an hour',
    unit: 'count',
    means: 'Whole pours in an hour at that pace.',
  },
  'pours.halves': {
    label: 'halves before a pour',
    unit: 'C',
    means:
      'How warm the halves are where they meet, before each pour, once they grow no warmer at that pace.',
  },
  'pours.preheatSure': {
    label: 'halves for a sure fill',
    unit: 'C',
    means: 'How warm the halves have to be for the mold to be full before any casting begins to set.',
  },
  'pours.preheatLeast': {
    label: 'halves at least',
    unit: 'C',
    means: 'How warm the halves have to be for the mold to be full before a casting has set through.',
  },
} as const satisfies Record<string, FigureEntry>;
