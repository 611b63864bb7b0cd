import { fixture, type SolidKind } from './kind.ts';

export const leftByCutter = {
  ...fixture,
  id: 'left-by-cutter',
  role: 'left by the cutter',
  order: 19,
  use: 'What the end mill of the plan leaves standing in a half: to look at, not to make.',
  color: '#C2452D',
  look: { title: 'Left by the cutter', color: '#b5563f' },
  side: 'lower',
  shownAtFirst: false,
  firstUse: 'look',
  printable: false,
} as const satisfies SolidKind;
