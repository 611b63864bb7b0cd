import { balance } from './balance/balance.tsx';
import { fillingPanel } from './filling/filling.tsx';
import { findingsPanel } from './findings.tsx';
import { layout } from './layout/layout.tsx';
import type { Panel } from './panel.ts';
import { register } from './register.tsx';
import { spin } from './spin.tsx';
import { takeAwayPanel } from './take-away.tsx';
import { thickness } from './thickness/thickness.tsx';
import { trialsPanel } from './trials/trials.tsx';
import { wallsPanel } from './walls/walls.tsx';

/** The bench steps, in their order. A new one is one file and one line here. */
export const panels: readonly [Panel, ...Panel[]] = [
  layout,
  thickness,
  wallsPanel,
  register,
  balance,
  spin,
  fillingPanel,
  findingsPanel,
  takeAwayPanel,
  trialsPanel,
];
