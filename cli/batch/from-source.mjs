// The worker when the program runs from its source: Node cannot load TypeScript by itself.
import { register } from 'tsx/esm/api';

register();
export const { makeVariant } = await import('./make-variant.ts');
