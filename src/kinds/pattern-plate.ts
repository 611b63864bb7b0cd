import { fixture, type SolidKind } from './kind.ts';

export const patternPlate = {
  ...fixture,
  id: 'pattern-plate',
  role: 'pattern plate',
  order: 13,
  use: 'Silicone or resin is poured on it and becomes a half.',
  color: '#5E8A6B',
  look: { title: 'Pattern plates', color: '#9c9a6c' },
  side: 'of its half',
  shownAtFirst: true,
  showsMasters: true,
  inOpenMold: 'face',
} as const satisfies SolidKind;
