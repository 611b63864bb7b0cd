import { plate, type SolidKind } from './kind.ts';

export const nest = {
  ...plate,
  id: 'nest',
  role: 'nest',
  order: 16,
  use: 'Laid on the parting face of its half, it shows by its numbers where each build-up goes; lifted off before closing.',
  color: '#8C8F5A',
  look: { title: 'Nests of build-ups', color: '#93a07e' },
} as const satisfies SolidKind;
