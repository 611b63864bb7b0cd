import type { FigureEntry } from './entry.ts';

/** A run of castings: pours, metal, time, cost. */
export const orderFigures = {
  'order.pours': { label: 'pours', unit: 'count', means: 'Pours that the order takes.' },
  'order.made': {
    label: 'good castings then made',
    unit: 'count',
    means: 'Good castings of a master that those pours give.',
  },
  'order.metal': { label: 'metal poured in all', unit: 'kg', means: 'Metal poured in all of them together.' },
  'order.used': {
    label: 'metal used up',
    unit: 'kg',
    means: 'Metal that does not come back: good castings, and what is lost in melting.',
  },
  'order.remelt': {
    label: 'melted again',
    unit: 'ratio',
    means: 'Share of the metal poured that goes back into the pot: sprue, gates and misruns.',
  },
  'order.time': {
    label: 'time for the order',
    unit: 's',
    means: 'Time from the first pour to the end of the last.',
  },
  'cost.metal': { label: 'metal of a casting', unit: 'money', means: 'Cost of the metal of one casting.' },
  'cost.work': {
    label: 'work for a casting',
    unit: 'money',
    means: 'Cost of the time that one casting takes.',
  },
  'cost.mold': { label: 'the mold', unit: 'money', means: 'Cost of the mold: rubber, all else, and time.' },
  'cost.moldShare': {
    label: 'share of the mold',
    unit: 'money',
    means: 'What each casting of the run bears of the cost of the mold.',
  },
  'cost.casting': { label: 'one casting', unit: 'money', means: 'Cost of one casting in all.' },
  'cost.run': { label: 'the whole run', unit: 'money', means: 'Cost of the whole run, the mold included.' },
} as const satisfies Record<string, FigureEntry>;
