import { useState } from 'preact/hooks';
import { mmPerInch, toDegrees } from '../../../geometry/index.ts';
import { quantityFinding, readQuantity } from '../../../plan/index.ts';
import { allRound, removeThing, setPose } from '../../state/drag.ts';
import { dragState, itemOf, type Pose, poseOf } from '../../state/drag-state.ts';
import { said } from '../../state/show.ts';
import { fault, picked } from '../../state/store.ts';
import { units } from '../../state/view.ts';
import { Nearby } from './nearby.tsx';

/** The chosen thing: where it is, to be read and to be set, and what it is near. */
export function Chosen() {
  const id = picked.value;
  const item = itemOf(id);
  const resting = id === undefined ? undefined : poseOf(id);
  if (id === undefined || !item || !resting) {
    return <p class="hint">Choose a thing in the list or, while moving by hand, in the picture.</p>;
  }
  const pose = dragState.value?.item.id === id ? dragState.value.pose : resting;
  const { kind } = item;
  const onRim = kind === 'tab' || kind === 'notch';
  return (
    <section class="chosen" aria-label={`Chosen: ${id}`}>
      <h3>{id}</h3>
      <div class="fields">
        {!onRim && <LengthField id={id} name="radius" label="From center" pose={pose} />}
        <AngleField id={id} name="angleRad" label="Angle" pose={pose} />
        {!onRim && <AngleField id={id} name="turnRad" label="Turn" pose={pose} />}
        {kind === 'placement' && <LengthField id={id} name="depth" label="Sink" pose={pose} />}
      </div>
      <Nearby id={id} />
      <div class="row">
        {!onRim && <AllRound key={id} id={id} />}
        <button type="button" onClick={() => removeThing(id)}>
          Take away
        </button>
      </div>
    </section>
  );
}

interface FieldProps<K extends keyof Pose> {
  readonly id: string;
  readonly name: K;
  readonly label: string;
  readonly pose: Pose;
}

/** Takes any length a plan takes, such as `3/8 in`; a bare number is in the unit shown. */
function LengthField({ id, name, label, pose }: FieldProps<'radius' | 'depth'>) {
  const metric = units.value === 'mm';
  const shown = metric ? pose[name].toFixed(2) : (pose[name] / mmPerInch).toFixed(4);
  return (
    <label>
      <span>{label}</span>
      <input
        type="text"
        inputMode="decimal"
        value={Number(shown)}
        onChange={({ currentTarget }) => {
          const text = currentTarget.value.trim();
          const bare = /^-?[\d.]+$/.test(text);
          const read = readQuantity(bare && !metric ? `${text} in` : bare ? Number(text) : text, 'length');
          if ('fault' in read) fault.value = said(quantityFinding(read.fault, id)).says;
          else setPose(id, { [name]: read.value });
        }}
      />
      {metric ? 'mm' : 'in'}
    </label>
  );
}

function AngleField({ id, name, label, pose }: FieldProps<'angleRad' | 'turnRad'>) {
  return (
    <label>
      <span>{label}</span>
      <input
        type="text"
        inputMode="decimal"
        value={Number(toDegrees(pose[name]).toFixed(2))}
        onChange={({ currentTarget }) => {
          const text = currentTarget.value.trim();
          const read = readQuantity(/^-?[\d.]+$/.test(text) ? Number(text) : text, 'angle');
          if ('fault' in read) fault.value = said(quantityFinding(read.fault, id)).says;
          else setPose(id, { [name]: read.value });
        }}
      />
      deg
    </label>
  );
}

function AllRound({ id }: { readonly id: string }) {
  const [count, setCount] = useState(3);
  return (
    <div class="all-round">
      <button type="button" onClick={() => allRound(id, count)}>
        Repeat round the disc
      </button>
      <input
        type="number"
        aria-label="How many in all"
        min={2}
        max={60}
        value={count}
        onInput={({ currentTarget }) => {
          setCount(Math.min(60, Math.max(2, Math.round(currentTarget.valueAsNumber) || 2)));
        }}
      />
    </div>
  );
}
