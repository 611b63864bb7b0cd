import { fixture, type SolidKind } from './kind.ts';

export const scaledMaster = {
  ...fixture,
  id: 'scaled-master',
  role: 'scaled master',
  order: 12,
  use: 'The master with the shrink allowances added, to print and to make the mold from.',
  color: '#D8C7A0',
  look: { title: 'Scaled masters', color: '#b4bcc4' },
  side: 'lower',
  shownAtFirst: false,
  madeOf: 'its master',
  firstUse: 'print',
} as const satisfies SolidKind;
