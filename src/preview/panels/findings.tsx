import type { Finding } from '../../findings/index.ts';
import { said } from '../state/show.ts';
import { findings, flyTo, picked } from '../state/store.ts';
import type { Panel } from './panel.ts';

export const findingsPanel: Panel = {
  id: 'findings',
  title: 'Findings',
  hint: 'What the checks found, worst first. Pick one to see its place.',
  View: () => (
    <ol class="findings">
      {findings.value.map((one) => (
        <FindingRow key={keyOf(one)} one={one} />
      ))}
      {findings.value.length === 0 && <li>Nothing so far.</li>}
    </ol>
  ),
};

/** Tells a finding from every other. */
export const keyOf = ({ code, subject, place, values }: Finding): string =>
  JSON.stringify([code, subject, place, values]);

/** What is to be typed stands between backticks in a finding's words. */
const withCode = (words: string) =>
  words.split('`').map((part, i) => (i % 2 === 1 ? <code key={part}>{part}</code> : part));

/** One finding; its head leads to its place in the picture. */
export function FindingRow({ one }: { readonly one: Finding }) {
  const { severity, code, subject, at, place } = one;
  const { says, remedy } = said(one);
  return (
    <li class={`finding is-${severity}`}>
      <button
        type="button"
        class="plain"
        onClick={() => {
          picked.value = subject;
          if (place) flyTo.value = [...place];
        }}
      >
        <strong>{severity}</strong> {code} <span class="subject">{subject}</span>
      </button>
      <p>{withCode(says)}</p>
      <p class="remedy">{withCode(remedy)}</p>
      {at && (
        <p class="where">
          {at.file}:{at.line}
        </p>
      )}
    </li>
  );
}
