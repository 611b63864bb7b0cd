import { fixture, type SolidKind } from './kind.ts';

export const halves = {
  ...fixture,
  id: 'halves',
  role: 'half',
  order: 1,
  use: 'One half of the mold: to print or mill as a test half, to look at, or to cut rubber by.',
  color: '#9AA58C',
  look: {
    lower: { title: 'Lower half', color: '#7d9186' },
    upper: { title: 'Upper half', color: '#b08a74' },
  },
  side: 'of its half',
  shownAtFirst: true,
  showsMasters: true,
  inOpenMold: 'face',
  madeOf: 'half',
  firstUse: 'make where rigid',
} as const satisfies SolidKind;
