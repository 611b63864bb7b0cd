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
}

/** Says a cause in the person's units, once for all its places. */
export function sayCause({ worst, findings }: Cause, system: UnitSystem): CauseSentences {
  const alike = new Set(findings.map((one) => sayFinding(nameless(one), system).says)).size === 1;
  const place = worst.place ? `at ${placeText(worst.place, system)}` : '';
  const several = `${findings.length} places${alike ? ' alike, the first' : ', the worst'}`;
  return {
    ...sayFinding(worst, system),
    subjects: runs([...new Set(findings.map(({ subject }) => subject))]),
    where: findings.length === 1 ? place : place === '' ? several : `${several} ${place}`,
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
