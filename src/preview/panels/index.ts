import { findingsPanel } from './findings.tsx';
import { layout } from './layout.tsx';
import type { Panel } from './panel.ts';
import { register } from './register.tsx';
import { takeAway } from './take-away.tsx';

/** The bench steps, in their order. A new one is one file and one line here. */
export const panels: readonly [Panel, ...Panel[]] = [layout, register, findingsPanel, takeAway];
