import { plate, type SolidKind } from './kind.ts';

export const registrationJig = {
  ...plate,
  id: 'registration-jig',
  role: 'jig',
  order: 14,
  use: 'Dropped into the can or onto the disc, it holds every boss in its place while it is set.',
  color: '#7A6A9A',
  look: { title: 'Jig', color: '#a2a878' },
} as const satisfies SolidKind;
