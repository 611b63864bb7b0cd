import { fixture, type SolidKind } from './kind.ts';

export const notch = {
  ...fixture,
  id: 'notch',
  role: 'notch',
  order: 10,
  use: 'Laid against the rim of both halves, it leaves the mark that shows how they belong together.',
  color: '#6B6B6B',
  look: { title: 'Notches', color: '#93705e' },
  side: 'lower',
  shownAtFirst: false,
} as const satisfies SolidKind;
