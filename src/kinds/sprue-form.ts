import type { SolidKind } from './kind.ts';

export const sprueForm = {
  id: 'sprue-form',
  role: 'sprue form',
  order: 4,
  use: 'Stands in the middle while the mold is made and leaves the well and the pouring hole.',
  color: '#B0703C',
  look: { title: 'Sprue form', color: '#577792' },
  side: 'loose',
  shownAtFirst: true,
  printable: true,
  flat: false,
  showsMasters: false,
  inOpenMold: 'on the face',
  madeOf: 'the fixtures',
  atBosses: false,
} as const satisfies SolidKind;
