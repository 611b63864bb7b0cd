import { join } from 'node:path';
import { Cache, type ResultStore } from '../../src/pipeline/index.ts';
import { programStamp } from './program-stamp.ts';
import { ResultsOnDisk } from './results-on-disk.ts';
import { userCacheFolder } from './user-cache-folder.ts';

/** What a command takes: `--no-cache` says that nothing is to be kept from one run to the next. */
export interface CacheOption {
  readonly cache?: boolean;
}

/** More than a mold has. */
const mostResults = 100_000;

let kept: ResultStore | undefined;

/** The cache of one run, as options of the pipeline; without `--no-cache` it has the results of earlier runs. */
export function runCache(options: CacheOption): { readonly cache?: Cache } {
  const store = keptResults(options);
  return store ? { cache: new Cache(mostResults, store) } : {};
}

/** Results of earlier runs in the person's own cache folder; none where they are not wanted. */
export function keptResults({ cache }: CacheOption): ResultStore | undefined {
  if (!cache) return undefined;
  kept ??= new ResultsOnDisk(join(userCacheFolder(), 'results'), programStamp());
  return kept;
}
