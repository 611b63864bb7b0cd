import { useEffect } from 'preact/hooks';
import { requestFilling } from '../../state/actions.ts';
import { filling, fillingIsCurrent, findings, mold, solidsAreCurrent } from '../../state/store.ts';
import { pose } from '../../state/view.ts';
import { neverFilled } from '../../worker/fill-grid.ts';
import { clearTheWay } from '../clear-the-way.ts';
import { CauseRow, causes, keyOf } from '../findings.tsx';
import type { Panel } from '../panel.ts';
import { Channels } from './channels.tsx';
import { Play } from './play.tsx';
import { Pockets } from './pockets.tsx';
import { Propose } from './propose.tsx';
import { Scale } from './scale.tsx';

export const fillingPanel: Panel = {
  id: 'filling',
  title: 'Filling',
  hint: 'Where metal comes first and last, and where air stays. A forecast: a trial pour decides.',
  View: () => {
    useEffect(clearTheWay, [pose.value]);
    const isMissing = solidsAreCurrent.value && !fillingIsCurrent.value;
    useEffect(() => {
      if (isMissing) requestFilling();
    }, [isMissing]);
    if (mold.value?.placements.length === 0) return <p>No cavity yet.</p>;
    const hasEmpty = (filling.value ?? []).some(({ grid }) => grid.order.includes(neverFilled));
    return (
      <>
        <Scale hasEmpty={hasEmpty} />
        <Play />
        <p class="remark" aria-live="polite">
          {stateOf()}
        </p>
        <h3>Air that stays</h3>
        <Pockets />
        <h3>Gates and vents</h3>
        <Propose />
        <Channels />
        <Others />
      </>
    );
  },
};

function stateOf(): string {
  if (!fillingIsCurrent.value)
    return filling.value
      ? 'Of the plan before the last change: being worked out anew.'
      : 'The colors come when the solids are done.';
  return filling.value?.length ? '' : 'No cavity is seen filling; what is missing is said below.';
}

/** What else was found about filling. */
function Others() {
  const isPocket = (code: string): boolean => code === 'fill.air-stays' || code === 'fill.air-may-stay';
  const others = findings.value.filter(({ code }) => code.startsWith('fill.') && !isPocket(code));
  if (others.length === 0) return null;
  return (
    <>
      <h3>Findings</h3>
      <ol class="findings">
        {causes(others).map((cause) => (
          <CauseRow key={keyOf(cause.worst)} cause={cause} />
        ))}
      </ol>
    </>
  );
}
