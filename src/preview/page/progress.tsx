import { cancelBuild } from '../state/actions.ts';
import { fault, step } from '../state/store.ts';

/** What is being computed, with a way to leave it off; and what went wrong with the program itself. */
export function Progress() {
  const now = step.value;
  return (
    <div class="progress" aria-live="polite">
      {fault.value && (
        <p class="fault" role="alert">
          {fault.value}
          <button
            type="button"
            onClick={() => {
              fault.value = undefined;
            }}
          >
            close
          </button>
        </p>
      )}
      {now && (
        <p class="working">
          <progress aria-label="Work done" max={Math.max(1, now.total)} value={now.done} />
          <span>{now.title}</span>
          <button type="button" onClick={cancelBuild}>
            leave off
          </button>
        </p>
      )}
    </div>
  );
}
