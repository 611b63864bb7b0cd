import { fixture, type SolidKind } from './kind.ts';

export const discBlank = {
  ...fixture,
  id: 'disc-blank',
  role: 'blank',
  order: 2,
  use: 'A half without cavities: the disc as it is cut from stock, to check the can and the layout with.',
  color: '#B8B2A6',
  look: { title: 'Blank discs', color: '#a3a69b' },
  side: 'of its half',
  shownAtFirst: false,
  madeOf: 'half',
  firstUse: 'make where rigid',
} as const satisfies SolidKind;
