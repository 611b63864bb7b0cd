import { useState } from 'preact/hooks';
import type { Finding } from '../../../findings/index.ts';
import type { TrialSummary } from '../../../trials/index.ts';
import { said } from '../../state/show.ts';
import { takeProposal } from '../../state/trial-log.ts';
import { openPanel } from '../../state/view.ts';
import { keyOf } from '../findings.tsx';

/** The next single change, the first before the others; and what a trial has shown not to help. */
export function Next({ summary: { advice } }: { readonly summary: TrialSummary }) {
  return (
    <section aria-label="What to change next">
      <h3>Change one thing next</h3>
      {advice.tries.length === 0 ? (
        <p class="remark">Nothing is proposed: no fault is noted that a rule knows.</p>
      ) : (
        <ol class="findings tries">
          {advice.tries.map((one) => (
            <Try key={keyOf(one)} one={one} />
          ))}
        </ol>
      )}
      {advice.heldBack.length > 0 && (
        <details>
          <summary>Held back: tried without help ({advice.heldBack.length})</summary>
          {advice.heldBack.map((one) => (
            <p key={keyOf(one)} class="remark">
              {said(one).says}
            </p>
          ))}
        </details>
      )}
    </section>
  );
}

function Try({ one }: { readonly one: Finding }) {
  const [why, setWhy] = useState<string>();
  const { says, remedy } = said(one);
  return (
    <li class="finding">
      <p>
        <strong>{remedy}</strong>
      </p>
      <p>{says}</p>
      {one.code === 'try.vent' ? (
        <button
          type="button"
          onClick={() => {
            openPanel.value = 'filling';
          }}
        >
          See where a vent can run
        </button>
      ) : (
        <button type="button" onClick={() => setWhy(takeProposal(one))}>
          Write into the plan
        </button>
      )}
      {why !== undefined && (
        <p class="remark" role="status">
          {why}
        </p>
      )}
    </li>
  );
}
