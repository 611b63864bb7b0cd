import type { SolidKind } from './kind.ts';

export const bossCups = {
  id: 'boss-cups',
  role: 'boss cup',
  order: 7,
  use: 'Takes the head of a loose boss: to try its fit, and as a sleeve in the upper half where the rubber over it is thick enough.',
  color: '#7FA3B5',
  look: { title: 'Socket cups', color: '#a98f5a' },
  side: 'upper',
  shownAtFirst: false,
  printable: true,
  flat: false,
  showsMasters: false,
  inOpenMold: 'no',
  madeOf: 'the fixtures',
  atBosses: true,
} as const satisfies SolidKind;
