export { closing } from './closing.ts';
export { mismatch } from './mismatch.ts';
export { play } from './play.ts';
