import type { TriangleMesh } from '../../src/geometry/index.ts';
import type { Kernel } from '../../src/kernel/index.ts';
import { beetle } from './beetle.ts';
import { fernFrond } from './fern-frond.ts';
import { ivyLeaf } from './ivy-leaf.ts';
import { oakButton } from './oak-button.ts';
import { seedHead } from './seed-head.ts';
import { snailShell } from './snail-shell.ts';

/** The charms of the demo by the names of their files: each a closed solid in mm, z up, standing on z = 0. */
export const hedgerowMasters: Readonly<Record<string, (kernel: Kernel) => TriangleMesh>> = {
  'ivy-leaf': ivyLeaf,
  'fern-frond': fernFrond,
  beetle,
  'snail-shell': snailShell,
  'oak-button': oakButton,
  'seed-head': seedHead,
};
