import { Choice } from '../../page/choice.tsx';
import { isNear, pointing } from '../../state/pointing.ts';
import {
  changeMark,
  faultInHand,
  faults,
  type Mark,
  marks,
  notedPour,
  notePour,
  pourFields,
  pourTexts,
  removeMark,
  typeField,
} from '../../state/pour-entry.ts';
import {
  downloadLog,
  logName,
  logReading,
  logToDownload,
  nextPour,
  takeBackPour,
} from '../../state/trial-log.ts';

/** The pour that is being entered. */
export function Enter() {
  const number = nextPour.value;
  const marked = [...marks.value];
  return (
    <section class="pour-entry" aria-label={`Pour ${number}`}>
      <h3>Pour {number}</h3>
      <div class="pour-fields">
        {pourFields.map(({ name, says }) => (
          <label key={name}>
            <span>{says}</span>
            <input
              value={pourTexts.value[name] ?? ''}
              maxLength={name === 'changed' || name === 'note' ? 300 : 60}
              onInput={({ currentTarget }) => typeField(name, currentTarget.value)}
            />
          </label>
        ))}
      </div>
      <Choice label="A press on a cavity notes (keys 1 to 5)" value={faultInHand} options={faults} />
      {marked.length > 0 && (
        <ul class="marks" aria-label="Castings that did not come out well">
          {marked.map(([id, mark]) => (
            <MarkRow key={id} id={id} mark={mark} />
          ))}
        </ul>
      )}
      <div class="row">
        <button type="button" class="main" onClick={() => void notePour(true)} title="G">
          {marked.length === 0 ? 'All good' : 'All others good'}
        </button>
        {marked.length > 0 && (
          <button type="button" onClick={() => void notePour(false)}>
            Only these were looked at
          </button>
        )}
      </div>
      <Noted />
    </section>
  );
}

function MarkRow({ id, mark }: { readonly id: string; readonly mark: Mark }) {
  return (
    <li class={isNear(id) ? 'is-near' : ''} {...pointing(id)}>
      <span>{`${id} ${mark.came}`}</span>
      <input
        aria-label={`Where on ${id}`}
        placeholder="where"
        maxLength={60}
        value={mark.where}
        onInput={({ currentTarget }) => changeMark(id, { where: currentTarget.value })}
      />
      <input
        aria-label={`Share of ${id} that is missing`}
        placeholder="20 %"
        maxLength={8}
        value={mark.missing}
        onInput={({ currentTarget }) => changeMark(id, { missing: currentTarget.value })}
      />
      <button type="button" class="plain" aria-label={`${id} came out well`} onClick={() => removeMark(id)}>
        ×
      </button>
    </li>
  );
}

/** What was written last, and the way back. */
function Noted() {
  const last = logReading.value.log?.pours.at(-1)?.pour;
  return (
    <>
      <p class="remark" aria-live="polite">
        {notedPour.value !== undefined && `Pour ${notedPour.value} noted in ${logName.value}.`}
      </p>
      <div class="row">
        {last !== undefined && (
          <button type="button" onClick={() => void takeBackPour()}>
            Take back pour {last}
          </button>
        )}
        {logToDownload.value !== undefined && (
          <button type="button" onClick={downloadLog}>
            Save the log as a file
          </button>
        )}
      </div>
    </>
  );
}
