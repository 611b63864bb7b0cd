import { kinds } from '../src/kinds/index.ts';
import { Unreadable } from './exit.ts';

/**
 * The names `--only` asks for, also several in one word with commas. A word of a kind's name, such as `jig`, means that
 * kind where none begins so.
 */
export function onlyAsked(words: readonly string[] | undefined): string[] | undefined {
  if (!words) return undefined;
  const names = words.flatMap((word) => word.split(',')).map((name) => name.trim());
  const asked = names.filter((name) => name !== '').flatMap(kindsMeant);
  if (asked.length === 0) throw new Unreadable(`--only ${words.join(' ')}: name a solid or a kind of solids`);
  return [...new Set(asked)];
}

function kindsMeant(name: string): string[] {
  const ids = kinds.map(({ id }) => id);
  if (ids.some((id) => id.startsWith(name))) return [name];
  const meant = ids.filter((id) => id.split('-').some((word) => word === name || `${word}s` === name));
  return meant.length > 0 ? meant : [name];
}
