export { draft } from './draft.ts';
export { release } from './release.ts';
export { support } from './support.ts';
