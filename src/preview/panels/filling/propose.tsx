import { cancelBuild } from '../../state/actions.ts';
import { isProposing, pickedChannel, proposed } from '../../state/channel-state.ts';
import { propose } from '../../state/channels.ts';
import { quantity } from '../../state/show.ts';
import { mold, picked, solidsAreCurrent } from '../../state/store.ts';

/** Gates and vents found by the program, for one part or for all. What somebody chose stays. */
export function Propose() {
  const placements = mold.value?.placements ?? [];
  const one = placements.find(({ id }) => id === (pickedChannel.value?.placement ?? picked.value));
  if (isProposing.value)
    return (
      <div class="row" aria-live="polite">
        <span class="remark">Looking for gates and vents.</span>
        <button type="button" onClick={cancelBuild}>
          Stop looking
        </button>
      </div>
    );
  return (
    <>
      <div class="row">
        <button type="button" disabled={!solidsAreCurrent.value} onClick={() => propose()}>
          Propose for all
        </button>
        {one && (
          <button type="button" disabled={!solidsAreCurrent.value} onClick={() => propose(one.id)}>
            Propose for {one.id}
          </button>
        )}
      </div>
      <Outcome />
    </>
  );
}

function Outcome() {
  const now = proposed.value;
  if (!now || now.fault !== undefined) return null;
  const { gates, vents, before, after } = now;
  return (
    <p class="remark" aria-live="polite">
      {gates + vents === 0
        ? 'Nothing better was found than what the plan has.'
        : `Written into the plan: entries for ${gates} gates and ${vents} vents; ${quantity(before, 'mm3')} of air stayed before, ${quantity(after, 'mm3')} stay with them. Undo takes them back.`}
    </p>
  );
}
