import type { SolidKind } from './kind.ts';

export const scaledMaster = {
  id: 'scaled-master',
  role: 'scaled master',
  order: 12,
  use: 'The master with the shrink allowances added, to print and to make the mold from.',
  color: '#D8C7A0',
  look: { title: 'Scaled masters', color: '#b4bcc4' },
  side: 'lower',
  shownAtFirst: false,
  printable: true,
  flat: false,
  showsMasters: false,
  inOpenMold: 'no',
  madeOf: 'its master',
  atBosses: false,
} as const satisfies SolidKind;
