import { plate, type SolidKind } from './kind.ts';

export const layoutPlate = {
  ...plate,
  id: 'layout-plate',
  role: 'layout plate',
  order: 15,
  use: 'Laid on the lower half, it shows where each master lies, how it is turned and how deep it sinks.',
  color: '#9A8F7A',
  look: { title: 'Layout plate', color: '#b3a184' },
  showsMasters: true,
} as const satisfies SolidKind;
