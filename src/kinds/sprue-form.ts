import { fixture, type SolidKind } from './kind.ts';

export const sprueForm = {
  ...fixture,
  id: 'sprue-form',
  role: 'sprue form',
  order: 4,
  use: 'Stands in the middle while the mold is made and leaves the well and the pouring hole.',
  color: '#B0703C',
  look: { title: 'Sprue form', color: '#577792' },
  side: 'loose',
  shownAtFirst: true,
  inOpenMold: 'on the face',
} as const satisfies SolidKind;
