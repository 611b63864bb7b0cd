import type { Finding } from '../../findings/index.ts';
import { quantity } from '../state/show.ts';
import { findings, flyTo, picked } from '../state/store.ts';
import type { Panel } from './panel.ts';

export const findingsPanel: Panel = {
  id: 'findings',
  title: 'Findings',
  hint: 'What the checks found, worst first. Pick one to see its place.',
  View: () => (
    <ol class="findings">
      {findings.value.map((one) => (
        <FindingRow key={`${one.code} ${one.subject} ${one.says}`} one={one} />
      ))}
      {findings.value.length === 0 && <li>Nothing so far.</li>}
    </ol>
  ),
};

/** What is to be typed stands between backticks in a finding's words. */
const withCode = (words: string) =>
  words.split('`').map((part, i) => (i % 2 === 1 ? <code key={part}>{part}</code> : part));

/** One finding; its head leads to its place in the picture. */
export function FindingRow({ one }: { readonly one: Finding }) {
  const { severity, code, subject, says, remedy, measured, limit, at, place } = one;
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
      {measured && limit && (
        <p class="number">
          {quantity(measured.value, measured.unit)}; limit {quantity(limit.value, limit.unit)}
        </p>
      )}
      <p class="remedy">{withCode(remedy)}</p>
      {at && (
        <p class="where">
          {at.file}:{at.line}
        </p>
      )}
    </li>
  );
}
