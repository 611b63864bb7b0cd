import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';

/** Where the system wants a program's caches, by its own convention: the XDG Base Directory Specification on Linux. */
export function userCacheFolder(
  platform: NodeJS.Platform = process.platform,
  env: NodeJS.ProcessEnv = process.env,
  home = homedir(),
): string {
  if (platform === 'win32') return join(env.LOCALAPPDATA ?? join(home, 'AppData', 'Local'), 'discwright');
  if (platform === 'darwin') return join(home, 'Library', 'Caches', 'discwright');
  const named = env.XDG_CACHE_HOME;
  // A path that is not absolute is to be ignored, says the specification.
  return join(named && isAbsolute(named) ? named : join(home, '.cache'), 'discwright');
}
