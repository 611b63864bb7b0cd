import type { Memoize } from '../mold/index.ts';
import type { Cache } from './cache.ts';
import { contentKey } from './content-key.ts';

/** The cache in the form that lower rooms know. */
export const memoizeIn =
  (cache: Cache): Memoize =>
  (what, input, make) =>
    cache.memoize(`${what} ${contentKey(input)}`, make);
