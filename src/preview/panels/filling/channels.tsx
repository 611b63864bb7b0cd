import { useEffect } from 'preact/hooks';
import { Choice } from '../../page/choice.tsx';
import {
  type ChannelPoint,
  held,
  listedChannel,
  type MovableChannel,
  movableChannels,
  pickedChannel,
  shownPoints,
  tried,
} from '../../state/channel-state.ts';
import {
  addInMiddle,
  channelCompany,
  nudgePoint,
  readyPicked,
  removePoint,
  takeAway,
} from '../../state/channels.ts';
import { isNear, pointing } from '../../state/pointing.ts';
import { length } from '../../state/show.ts';
import { picked, solidsAreCurrent } from '../../state/store.ts';
import { units } from '../../state/view.ts';
import { PickButton } from '../pick-button.tsx';
import { Rows } from '../rows.tsx';

/** The picked gate or vent with its points, and all there are to pick from. */
export function Channels() {
  const all = movableChannels.value;
  const isReady = solidsAreCurrent.value && pickedChannel.value !== undefined;
  useEffect(() => {
    if (isReady) readyPicked();
  }, [isReady, picked.value]);
  if (all.length === 0) return <p class="remark">The plan has none yet.</p>;
  return (
    <>
      {pickedChannel.value ? (
        <Chosen one={pickedChannel.value} />
      ) : (
        <p class="hint">Pick one in the picture or below to move its points.</p>
      )}
      <details class="all-channels">
        <summary>All {all.length} gates and vents</summary>
        <Rows heads={['Gate or vent', 'Width']} caption="Gates and vents; pick one to move its points">
          {all.map(({ id, run }) => (
            <tr key={id} class={isNear(id) ? 'is-near' : ''} {...pointing(id)}>
              <td>
                <PickButton id={id} />
              </td>
              <td class="number">{length(run[0].width)}</td>
            </tr>
          ))}
        </Rows>
      </details>
    </>
  );
}

function Chosen({ one }: { readonly one: MovableChannel }) {
  const points = shownPoints.value;
  const shared = listedChannel.value?.placements.length ?? 1;
  const isGate = one.kind === 'gate';
  return (
    <section class="chosen" aria-label={`Chosen: ${one.id}`}>
      <h4>{one.id}</h4>
      {shared > 1 && (
        <div class="how-to-move">
          <Choice label={`${shared} alike`} value={channelCompany} options={['together', 'alone']} />
        </div>
      )}
      <ul class="points">
        <Point point="entry" says="Entry, on the outline" kind="entry" />
        {points?.through.map((way, i) => (
          <Point key={way.was ?? `new ${i}`} point={i} says={`Way point ${i + 1}`} kind="way" />
        ))}
        {one.opensInto === undefined && (
          <Point point="end" says={isGate ? 'End at the well' : 'End at the rim'} kind="end" />
        )}
      </ul>
      <p class="hint">
        Drag a point in the picture, or choose one here and press arrow keys. Delete takes a way point away.
      </p>
      <Trial />
      <div class="row">
        <button type="button" onClick={addInMiddle}>
          Add a way point
        </button>
        <button type="button" onClick={() => takeAway(one)}>
          Take away
        </button>
      </div>
    </section>
  );
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Half a millimeter, or a 64th of an inch; with Shift ten times as much. */
const stepNow = (fast: boolean): number => (units.value === 'mm' ? 0.5 : 25.4 / 64) * (fast ? 10 : 1);

interface PointProps {
  readonly point: ChannelPoint;
  readonly says: string;
  readonly kind: 'entry' | 'way' | 'end';
}

/** A point to be moved by keys. */
function Point({ point, says, kind }: PointProps) {
  const onKey = (event: KeyboardEvent): void => {
    const arrow = arrows[event.key];
    const step = stepNow(event.shiftKey);
    if (arrow) nudgePoint(point, [arrow[0] * step, arrow[1] * step]);
    else if (event.key === 'Delete' && typeof point === 'number') removePoint(point);
    else return;
    event.preventDefault();
  };
  return (
    <li>
      <button type="button" class="plain" onKeyDown={onKey}>
        <span class={`handle-sign is-${kind}`} aria-hidden="true" />
        {says}
      </button>
    </li>
  );
}

/** What comes of the move while it is made. */
function Trial() {
  const now = tried.value;
  if (!held.value || now?.id !== held.value.id) return null;
  if (!now.run)
    return (
      <p class="finding is-stop">
        It has no way there: through its own cavity, or without room for its bends. A way point may help.
      </p>
    );
  return (
    <p class={now.isFree ? 'remark' : 'finding is-warn'} data-took={now.took} aria-live="polite">
      {now.isFree ? 'Forecast as it would be.' : 'Nearer to something else than the plan allows.'}
    </p>
  );
}
