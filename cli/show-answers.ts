import type { Answer } from '../src/export/index.ts';
import { plain, verdictMark, wrap } from './terminal.ts';

/** One question to a line: what is asked, the verdict, and the number that decides beside what is wanted. */
export function showAnswers(answers: readonly Answer[], width: number): string {
  const asked = Math.max(...answers.map(({ asks }) => asks.length));
  const judged = Math.max(...answers.map(({ verdict }) => verdict.length));
  const hang = ' '.repeat(asked + judged + 4);
  return answers
    .map(({ asks, verdict, says, besides }) => {
      const mark = verdictMark(verdict);
      const pad = ' '.repeat(judged - plain(mark).length);
      const lines = [wrap(says, width, `${asks.padEnd(asked)}  ${mark}${pad}  `, hang)];
      if (besides !== undefined) lines.push(wrap(besides, width, hang));
      return lines.join('\n');
    })
    .join('\n');
}
