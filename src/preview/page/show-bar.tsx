import { type Kind, kindOfSolid, kinds } from '../scene/kinds.ts';
import { length } from '../state/show.ts';
import { mold, solids } from '../state/store.ts';
import { cut, hidden, pose, seeThrough, setView, viewNames } from '../state/view.ts';

/** Under the picture: which kinds are shown, from where, how the halves stand, and where the picture is cut off. */
export function ShowBar() {
  return (
    <div class="show-bar">
      <ShownKinds />
      <div class="looks">
        <fieldset class="look-row">
          <legend class="unseen">Look</legend>
          {viewNames.map((name) => (
            <button key={name} type="button" onClick={() => setView(name)}>
              {name}
            </button>
          ))}
          <button type="button" onClick={() => setView('fit')}>
            show all
          </button>
        </fieldset>
        <HalvesControl />
        <CutControl />
      </div>
    </div>
  );
}

function ShownKinds() {
  const there = present();
  const isTool = ({ shownAtFirst }: Kind): boolean => !shownAtFirst;
  return (
    <fieldset class="chips">
      <legend class="unseen">Shown</legend>
      {there
        .filter((kind) => !isTool(kind))
        .map((kind) => (
          <Chip key={kind.id} kind={kind} />
        ))}
      {there.some(isTool) && (
        <details class="tools">
          <summary>Blanks, tools</summary>
          <div class="tool-chips">
            {there.filter(isTool).map((kind) => (
              <Chip key={kind.id} kind={kind} />
            ))}
          </div>
        </details>
      )}
    </fieldset>
  );
}

function HalvesControl() {
  const isOpen = pose.value === 'open book';
  return (
    <fieldset class="look-row">
      <legend class="unseen">Halves</legend>
      <button
        type="button"
        aria-pressed={isOpen}
        onClick={() => {
          pose.value = isOpen ? 'stacked' : 'open book';
        }}
      >
        open book
      </button>
      <button
        type="button"
        aria-pressed={seeThrough.value}
        onClick={() => {
          seeThrough.value = !seeThrough.value;
        }}
      >
        see-through
      </button>
    </fieldset>
  );
}

function Chip({ kind: { id, title, color } }: { readonly kind: Kind }) {
  return (
    <button type="button" class="chip" aria-pressed={!hidden.value.has(id)} onClick={() => toggle(id)}>
      <span class="swatch" style={{ '--swatch': color }} aria-hidden="true" />
      {title}
    </button>
  );
}

function present(): Kind[] {
  const there = new Set(solids.value.map((solid) => kindOfSolid(solid).id));
  if (there.has('blank')) {
    there.add('lower half');
    there.add('upper half');
  }
  if ((mold.value?.placements.length ?? 0) > 0) there.add('master');
  if ((mold.value?.channels.length ?? 0) > 0) there.add('channel');
  return kinds.filter(({ id }) => there.has(id));
}

function toggle(id: string): void {
  const next = new Set(hidden.value);
  if (!next.delete(id)) next.add(id);
  hidden.value = next;
}

const axes = { x: 'left and right', y: 'front and back', z: 'lower and upper' } as const;

function CutControl() {
  const at = cut.value;
  const radius = mold.value?.disc.radius ?? 100;
  const reach =
    at?.axis === 'z' ? Math.max(mold.value?.disc.lower ?? 20, mold.value?.disc.upper ?? 20) : radius;
  return (
    <fieldset class="look-row cut">
      <legend>Cut between</legend>
      <select
        aria-label="Cut between"
        value={at?.axis ?? 'none'}
        onChange={({ currentTarget: { value } }) => {
          cut.value = value === 'x' || value === 'y' || value === 'z' ? { axis: value, at: 0 } : undefined;
        }}
      >
        <option value="none">nothing</option>
        {(['x', 'y', 'z'] as const).map((axis) => (
          <option key={axis} value={axis}>
            {axes[axis]}
          </option>
        ))}
      </select>
      {at && (
        <>
          <input
            type="range"
            aria-label="Where it is cut"
            min={-reach}
            max={reach}
            step={reach / 200}
            value={at.at}
            onInput={({ currentTarget: { value } }) => {
              cut.value = { ...at, at: Number(value) };
            }}
          />
          <output>{length(at.at)}</output>
        </>
      )}
    </fieldset>
  );
}
