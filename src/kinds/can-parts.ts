import { plate, type SolidKind } from './kind.ts';

export const canParts = {
  ...plate,
  id: 'can-parts',
  role: 'can part',
  order: 17,
  use: 'Lies in the can with the disc, to center it or to stop it at its thickness.',
  color: '#6F7F8A',
  look: { title: 'Can parts', color: '#8793a0' },
} as const satisfies SolidKind;
