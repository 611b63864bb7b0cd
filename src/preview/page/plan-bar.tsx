import { redo, undo } from '../state/actions.ts';
import { save } from '../state/disk.ts';
import { canRedo, canUndo } from '../state/history.ts';
import { changed, plan } from '../state/store.ts';

/** Back, forward and saving. */
export function PlanBar() {
  const toDisk = plan.value?.origin === 'server';
  return (
    <div class="plan-bar">
      <button type="button" disabled={!canUndo.value} onClick={undo} title="Ctrl Z">
        Undo
      </button>
      <button type="button" disabled={!canRedo.value} onClick={redo} title="Ctrl Shift Z">
        Redo
      </button>
      <button
        type="button"
        class={changed.value ? 'is-changed' : ''}
        disabled={toDisk && !changed.value}
        onClick={() => void save()}
        title={toDisk ? 'Writes the plan file. Ctrl S' : 'Gives the plan as a download. Ctrl S'}
      >
        {toDisk ? (changed.value ? 'Save plan' : 'Saved') : 'Save plan as file'}
      </button>
    </div>
  );
}
