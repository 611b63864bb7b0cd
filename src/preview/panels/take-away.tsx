import { takeAll } from '../state/actions.ts';
import { solids, solidsAreCurrent, withheld } from '../state/store.ts';
import type { Panel } from './panel.ts';

export const takeAway: Panel = {
  id: 'take-away',
  title: 'Take away',
  hint: 'Files to print, machine or pour from.',
  View: () => (
    <>
      <p>
        <button type="button" class="main" disabled={!solidsAreCurrent.value} onClick={takeAll}>
          All fixtures as a zip
        </button>
      </p>
      <ul class="names">
        {solidsAreCurrent.value && solids.value.map(({ id, title }) => <li key={id}>{title}</li>)}
      </ul>
      {withheld.value.map(({ title, reasons }) => (
        <p key={title} class="withheld">
          Withheld: {title}. {reasons.join(' ')}
        </p>
      ))}
    </>
  ),
};
