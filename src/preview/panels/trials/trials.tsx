import { useEffect } from 'preact/hooks';
import { mold } from '../../state/store.ts';
import { isBroken, logName, logReading, readNow, trials } from '../../state/trial-log.ts';
import { pose, setView } from '../../state/view.ts';
import { clearTheWay } from '../clear-the-way.ts';
import { CauseRow, causes, keyOf } from '../findings.tsx';
import type { Panel } from '../panel.ts';
import { Enter } from './enter.tsx';
import { Next } from './next.tsx';
import { Pours } from './pours.tsx';
import { Told } from './told.tsx';
import { YieldPicture } from './yield-picture.tsx';

export const trialsPanel: Panel = {
  id: 'trials',
  title: 'Trials',
  hint: 'What came of each pour, kept in a log beside the plan, and what to change next.',
  View: () => {
    useEffect(clearTheWay, [pose.value]);
    useEffect(() => setView('from above'), []);
    if (!mold.value || !readNow.value) return <p>Reading the plan.</p>;
    if (mold.value.placements.length === 0) return <p>No cavity yet.</p>;
    return (
      <>
        <AboutLog />
        {!isBroken.value && <Enter />}
        <YieldPicture />
        {trials.value && (
          <>
            <Next summary={trials.value} />
            <Told summary={trials.value} />
            <Pours summary={trials.value} />
          </>
        )}
      </>
    );
  },
};

/** What is wrong with the log, or worth knowing of it. */
function AboutLog() {
  const { log, findings } = logReading.value;
  return (
    <>
      {log?.about !== undefined && <p class="remark">{log.about}</p>}
      {isBroken.value && <p>{logName.value} cannot be read; nothing is added to it until it is put right.</p>}
      {findings.length > 0 && (
        <ol class="findings">
          {causes(findings).map((cause) => (
            <CauseRow key={keyOf(cause.worst)} cause={cause} />
          ))}
        </ol>
      )}
    </>
  );
}
