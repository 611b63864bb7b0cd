import { exporters } from '../src/export/index.ts';
import { Unreadable } from './exit.ts';

/** The formats a command line names, also several in one word with commas; `usual` where it names none. */
export function formatsAsked(words: readonly string[] | undefined, usual: readonly string[]): string[] {
  const known = exporters.map(({ id }) => id);
  const asked = words?.flatMap((word) => word.split(',')).filter((name) => name !== '') ?? [...usual];
  const strange = asked.find((name) => !known.includes(name));
  if (strange !== undefined || asked.length === 0) {
    throw new Unreadable(`--formats ${words?.join(' ')}: give one or more of ${known.join(', ')}`);
  }
  return asked;
}
