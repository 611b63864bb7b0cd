import { fixture, type SolidKind } from './kind.ts';

export const buildUp = {
  ...fixture,
  id: 'build-up',
  role: 'build-up',
  order: 8,
  use: 'Lies under a thin bit of a master, so that it does not bend when the mold is pressed.',
  color: '#C9A227',
  look: { title: 'Build-ups', color: '#8b789f' },
  side: 'lower',
  shownAtFirst: true,
  inOpenMold: 'on the face',
  madeOf: 'its support',
} as const satisfies SolidKind;
