import type { Remember } from '../mold/index.ts';
import type { Cache } from './cache.ts';
import { contentKey } from './content-key.ts';

/** The cache in the form that lower rooms know. */
export const rememberIn =
  (cache: Cache): Remember =>
  (what, input, make) =>
    cache.remember(`${what} ${contentKey(input)}`, make);
