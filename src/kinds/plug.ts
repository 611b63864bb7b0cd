import { fixture, type SolidKind } from './kind.ts';

export const plug = {
  ...fixture,
  id: 'plug',
  role: 'plug',
  order: 5,
  use: 'Keeps the pouring hole of the upper half open during the cure; pulled out afterwards.',
  color: '#8C5A7A',
  look: { title: 'Plug', color: '#86a3b8' },
  side: 'loose',
  shownAtFirst: false,
} as const satisfies SolidKind;
