import { fixture, type SolidKind } from './kind.ts';

export const bosses = {
  ...fixture,
  id: 'bosses',
  role: 'boss',
  order: 6,
  use: 'Stands in the lower half and leaves its socket in the upper, so that the halves close one way.',
  color: '#4F7A94',
  look: { title: 'Bosses', color: '#c39a3f' },
  side: 'lower',
  shownAtFirst: true,
  inOpenMold: 'on the face',
  atBosses: true,
} as const satisfies SolidKind;
