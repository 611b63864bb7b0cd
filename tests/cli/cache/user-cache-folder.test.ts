import { join } from 'node:path';
import { expect, test } from 'vitest';
import { userCacheFolder } from '../../../cli/cache/user-cache-folder.ts';

test.each<[string, NodeJS.Platform, NodeJS.ProcessEnv, string]>([
  ['Linux', 'linux', {}, join('/home/ann', '.cache', 'discwright')],
  ['Linux, elsewhere', 'linux', { XDG_CACHE_HOME: '/var/ann' }, join('/var/ann', 'discwright')],
  ['Linux, not absolute', 'linux', { XDG_CACHE_HOME: 'ann' }, join('/home/ann', '.cache', 'discwright')],
  ['macOS', 'darwin', {}, join('/home/ann', 'Library', 'Caches', 'discwright')],
  ['Windows', 'win32', { LOCALAPPDATA: 'C:\\ann' }, join('C:\\ann', 'discwright')],
])('the cache of a person on %s', (_, platform, env, folder) => {
  expect(userCacheFolder(platform, env, '/home/ann')).toBe(folder);
});
