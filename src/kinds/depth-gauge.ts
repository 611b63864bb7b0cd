import { plate, type SolidKind } from './kind.ts';

export const depthGauge = {
  ...plate,
  id: 'depth-gauge',
  role: 'gauge',
  order: 18,
  use: 'Held against a master, it shows whether it is sunk as deep as the plan says.',
  color: '#A06A6A',
  look: { title: 'Gauges', color: '#94a6a0' },
} as const satisfies SolidKind;
