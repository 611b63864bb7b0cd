import { fixture, type SolidKind } from './kind.ts';

export const bossCups = {
  ...fixture,
  id: 'boss-cups',
  role: 'boss cup',
  order: 7,
  use: 'Takes the head of a loose boss: to try its fit, and as a sleeve in the upper half where the rubber over it is thick enough.',
  color: '#7FA3B5',
  look: { title: 'Socket cups', color: '#a98f5a' },
  side: 'upper',
  shownAtFirst: false,
  atBosses: true,
} as const satisfies SolidKind;
