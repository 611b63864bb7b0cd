import type { DrawnKind } from './kind.ts';

export const knifeStencil = { id: 'knife-stencil' } as const satisfies DrawnKind;
