import type { SolidKind } from './kind.ts';

export const depthGauge = {
  id: 'depth-gauge',
  role: 'gauge',
  order: 18,
  use: 'Held against a master, it shows whether it is sunk as deep as the plan says.',
  color: '#A06A6A',
  look: { title: 'Gauges', color: '#94a6a0' },
  side: 'lower',
  shownAtFirst: false,
  printable: true,
  flat: true,
  showsMasters: false,
  inOpenMold: 'no',
  madeOf: 'the fixtures',
  atBosses: false,
} as const satisfies SolidKind;
