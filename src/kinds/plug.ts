import type { SolidKind } from './kind.ts';

export const plug = {
  id: 'plug',
  role: 'plug',
  order: 5,
  use: 'Keeps the pouring hole of the upper half open during the cure; pulled out afterwards.',
  color: '#8C5A7A',
  look: { title: 'Plug', color: '#86a3b8' },
  side: 'loose',
  shownAtFirst: false,
  printable: true,
  flat: false,
  showsMasters: false,
  inOpenMold: 'no',
  madeOf: 'the fixtures',
  atBosses: false,
} as const satisfies SolidKind;
