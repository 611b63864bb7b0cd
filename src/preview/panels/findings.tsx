import { type Cause, causesByCode, type Finding } from '../../findings/index.ts';
import { saidOfAll } from '../state/show.ts';
import { findings, flyTo, picked } from '../state/store.ts';
import type { Panel } from './panel.ts';

export const findingsPanel: Panel = {
  id: 'findings',
  title: 'Findings',
  hint: 'What the checks found, worst first. Pick one to see its place.',
  View: () => (
    <ol class="findings">
      {causes(findings.value).map((cause) => (
        <CauseRow key={keyOf(cause.worst)} cause={cause} />
      ))}
      {findings.value.length === 0 && <li>Nothing so far.</li>}
    </ol>
  ),
};

/** Worst first; what has one cause is one. */
export const causes = (some: readonly Finding[]): Cause[] => causesByCode(some).flat();

/** Tells a finding from every other. */
export const keyOf = ({ code, subject, place, values }: Finding): string =>
  JSON.stringify([code, subject, place, values]);

/** What is to be typed stands between backticks in a finding's words. */
const withCode = (words: string) =>
  words.split('`').map((part, i) => (i % 2 === 1 ? <code key={part}>{part}</code> : part));

/** One cause; its head leads to the worst place of it in the picture, and a list to the others. */
export function CauseRow({ cause }: { readonly cause: Cause }) {
  const { worst, findings: all } = cause;
  const { severity, code, at } = worst;
  const { says, remedy, subjects, where } = saidOfAll(cause);
  return (
    <li class={`finding is-${severity}`}>
      <button type="button" class="plain" onClick={() => show(worst)}>
        <strong>{severity}</strong> {code} <span class="subject">{subjects}</span>
      </button>
      <p>{withCode(all.length > 1 ? `${where}: ${says}` : says)}</p>
      <p class="remedy">{withCode(remedy)}</p>
      {all.length > 1 && (
        <details>
          <summary>Show each</summary>
          <ul class="names">
            {all.map((one) => (
              <li key={keyOf(one)}>
                <button type="button" class="plain" onClick={() => show(one)}>
                  {nameOf(one)}
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
      {at && (
        <p class="where">
          {at.file}:{at.line}
        </p>
      )}
    </li>
  );
}

/** Picked, and its place in the middle of the picture. */
function show({ subject, place }: Finding): void {
  picked.value = subject;
  if (place) flyTo.value = [...place];
}

/** What it is about; of a wall both sides. */
const nameOf = ({ subject, values: { other } }: Finding): string =>
  typeof other === 'string' ? `${subject}, ${other}` : subject;
