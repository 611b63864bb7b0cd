import type { Process } from '../../mold/index.ts';

export const everyProcess: readonly Process[] = ['rubber', 'rigid', 'poured'];
