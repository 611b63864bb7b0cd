import type { Cause, Finding, UnitSystem } from '../findings/index.ts';
import { placeText } from './quantity.ts';
import { runs } from './runs.ts';
import { type Sentences, sayFinding } from './sentence.ts';

/** All findings of one cause in words: the sentences are those of the worst of them. */
export interface CauseSentences extends Sentences {
  /** All it is about: `leaf-1 to 8`. */
  readonly subjects: string;
  /** Where the sentences hold: a place, and of several that it is the worst. Empty where there is nothing to say. */
  readonly where: string;
  /** Where in the plan: `line 7`, `lines 7, 8`. Empty where that is not known. */
  readonly lines: string;
}

/** Number of an entry in a list of the plan. */
const entry = /#\d+/g;

/** Of more lines than these the first are told. */
const mostLines = 6;

function linesOf(findings: readonly Finding[]): string {
  const lines = [...new Set(findings.flatMap(({ at }) => at?.line ?? []))];
  if (lines.length === 0) return '';
  const more = lines.length - mostLines;
  const told = lines.slice(0, mostLines).join(', ');
  return `line${lines.length > 1 ? 's' : ''} ${told}${more > 0 ? ` and ${more} more` : ''}`;
}

/** Says a cause in the person's units, once for all its places. */
export function sayCause({ worst, findings }: Cause, system: UnitSystem): CauseSentences {
  const subjects = findings.map(({ subject }) => subject);
  const words = findings.map((one) => sayFinding(nameless(one), system).says.replaceAll(entry, ''));
  const alike = new Set(words).size === 1;
  const place = worst.place ? `at ${placeText(worst.place, system)}` : '';
  const first = place === '' ? ' alike' : ` alike, the first ${place}`;
  const several = `${findings.length} places${alike ? first : `, the worst${place === '' ? '' : ` ${place}`}`}`;
  return {
    ...sayFinding(worst, system),
    subjects: runs([
      ...new Set(findings.length > 1 ? subjects.map((one) => one.replaceAll(entry, '')) : subjects),
    ]),
    where: findings.length === 1 ? place : several,
    lines: linesOf(findings),
  };
}

/** The same about nobody in particular, to see whether two differ in more than what they are about. */
const nameless = (one: Finding): Finding => ({
  ...one,
  subject: '',
  values: {
    ...one.values,
    ...('other' in one.values && { other: '' }),
    ...('one' in one.values && { one: '' }),
  },
});
