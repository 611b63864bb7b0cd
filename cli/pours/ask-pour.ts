import type { Plan } from '../../src/plan/index.ts';
import { type PourWritten, usualOf } from '../../src/trials/index.ts';
import { Unreadable } from '../exit.ts';
import type { Ask } from '../terminal.ts';
import { idsNamed, readSettings, seenIn } from './read-settings.ts';

/** Asked one after another, in the order of the columns; an empty line leaves one out or takes what stands in brackets. */
const questions = [
  ['date', 'date'],
  ['metal', 'metal temperature'],
  ['mold', 'mold temperature'],
  ['speed', 'speed'],
  ['shot', 'shot'],
  ['talc', 'talc'],
] as const;

/** Asks line by line; undefined where the asking is broken off: then nothing is to be written. */
export async function askPour(ask: Ask, plan: Plan, number: number): Promise<PourWritten | undefined> {
  const settings: string[] = [];
  const usual: Partial<Record<string, string>> = usualOf(plan);
  const put = (name: string, value: string | undefined): void => {
    if (value !== undefined && value !== '') settings.push(`${name}=${value}`);
  };
  for (const [name, says] of questions) {
    const offered = usual[name];
    const answer = await ask(`${says}${offered === undefined ? '' : ` [${offered}]`}: `);
    if (answer === undefined) return undefined;
    put(name, answer === '' ? offered : answer);
  }
  const bad = await askBad(ask, plan);
  if (!bad) return undefined;
  settings.push(...bad);
  const others = await ask('all others good? [yes] or no: ');
  if (others === undefined) return undefined;
  if (!/^no?$/i.test(others)) put('others', 'good');
  for (const [name, says] of [
    ['changed', 'changed since the pour before'],
    ['note', 'anything else'],
  ]) {
    const answer = await ask(`${says}: `);
    if (answer === undefined) return undefined;
    put(name, answer);
  }
  return readSettings(settings, plan, number);
}

/** Castings that did not come out well, one a line; a line that is not understood is asked again. */
async function askBad(ask: Ask, plan: Plan): Promise<string[] | undefined> {
  const settings: string[] = [];
  let question = 'which came out badly, such as snail-1=short tip 20%; an empty line ends the list: ';
  for (;;) {
    const answer = await ask(question);
    if (answer === undefined) return undefined;
    if (answer === '') return settings;
    question = 'next: ';
    try {
      const [name, ...value] = answer.split('=');
      idsNamed(name.trim(), plan);
      seenIn(value.join('=').trim());
      settings.push(answer);
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      question = `${error.message}\nonce more: `;
    }
  }
}
