import { fixture, type SolidKind } from './kind.ts';

export const tab = {
  ...fixture,
  id: 'tab',
  role: 'tab',
  order: 9,
  use: 'Lies in the parting line at the rim; the blade that parts the halves goes in its slot.',
  color: '#A8443A',
  look: { title: 'Tabs', color: '#a9594f' },
  side: 'lower',
  shownAtFirst: true,
  inOpenMold: 'on the face',
} as const satisfies SolidKind;
