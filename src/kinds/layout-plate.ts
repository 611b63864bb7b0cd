import type { SolidKind } from './kind.ts';

export const layoutPlate = {
  id: 'layout-plate',
  role: 'layout plate',
  order: 15,
  use: 'Laid on the lower half, it shows where each master lies, how it is turned and how deep it sinks.',
  color: '#9A8F7A',
  look: { title: 'Layout plate', color: '#b3a184' },
  side: 'lower',
  shownAtFirst: false,
  printable: true,
  flat: true,
  showsMasters: true,
  inOpenMold: 'no',
  madeOf: 'the fixtures',
  atBosses: false,
} as const satisfies SolidKind;
