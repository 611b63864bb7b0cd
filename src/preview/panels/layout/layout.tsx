import { useEffect } from 'preact/hooks';
import { Choice } from '../../page/choice.tsx';
import { OpenFiles } from '../../page/open-files.tsx';
import { loose } from '../../scene/kinds.ts';
import {
  angleStep,
  angleSteps,
  arranging,
  company,
  doing,
  doings,
  inchStep,
  lengthSteps,
  mmStep,
} from '../../state/drag.ts';
import { length } from '../../state/show.ts';
import { mold } from '../../state/store.ts';
import { apart, hidden, setView, units } from '../../state/view.ts';
import type { Panel } from '../panel.ts';
import { Chosen } from './chosen.tsx';
import { Things } from './things.tsx';

export const layout: Panel = {
  id: 'layout',
  title: 'Lay out',
  hint: 'Where everything lies on the disc. Each change is written into the plan.',
  View: () => {
    useEffect(
      () => () => {
        arrange(false);
      },
      [],
    );
    if (!mold.value) return <p>Reading the plan.</p>;
    const { disc } = mold.value;
    return (
      <>
        <div class="row">
          <button
            type="button"
            class="main"
            aria-pressed={arranging.value}
            onClick={() => arrange(!arranging.value)}
          >
            {arranging.value ? 'Hands off' : 'Move by hand'}
          </button>
          <OpenFiles label="Add masters" />
        </div>
        {arranging.value && <HowToMove />}
        <Chosen />
        <Things />
        <dl class="facts">
          <div>
            <dt>Disc</dt>
            <dd>{length(2 * disc.radius)} across</dd>
          </div>
          <div>
            <dt>Lower half</dt>
            <dd>{length(disc.lower)}</dd>
          </div>
          <div>
            <dt>Upper half</dt>
            <dd>{length(disc.upper)}</dd>
          </div>
        </dl>
      </>
    );
  },
};

/** What lies over the parting face is put aside while things are moved on it. */
const aside = ['upper half', ...loose];

/** Which of it was hidden already, and is to stay so. */
let hiddenBefore: readonly string[] = [];
/** How far the halves stood apart: closed, all that is cut lies where it belongs. */
let apartBefore = 1;

function arrange(isOn: boolean): void {
  if (isOn === arranging.peek()) return;
  arranging.value = isOn;
  const others = [...hidden.peek()].filter((id) => !aside.includes(id));
  if (isOn) hiddenBefore = aside.filter((id) => hidden.peek().has(id));
  hidden.value = new Set([...others, ...(isOn ? aside : hiddenBefore)]);
  if (isOn) apartBefore = apart.peek();
  apart.value = isOn ? 0 : apartBefore;
  setView(isOn ? 'from above' : 'over the shoulder');
}

function HowToMove() {
  return (
    <div class="how-to-move">
      <Choice label="Drag, arrows" value={doing} options={doings} />
      <Choice label="In a ring" value={company} options={['alone', 'together']} />
      <div class="choice">
        <span class="legend">Steps</span>
        {units.value === 'mm' ? (
          <StepSelect label="Step of lengths" value={mmStep} options={lengthSteps.mm} unit="mm" />
        ) : (
          <StepSelect label="Step of lengths" value={inchStep} options={lengthSteps.in} unit="in" />
        )}
        <StepSelect label="Step of angles" value={angleStep} options={angleSteps} unit="deg" />
      </div>
      <p class="hint">Shift while dragging: no steps. Delete: take away.</p>
    </div>
  );
}

interface StepProps<T extends string> {
  readonly label: string;
  readonly value: { value: T };
  readonly options: readonly T[];
  readonly unit: string;
}

function StepSelect<T extends string>({ label, value, options, unit }: StepProps<T>) {
  return (
    <select
      aria-label={label}
      value={value.value}
      onChange={({ currentTarget }) => {
        const chosen = options.find((one) => one === currentTarget.value);
        if (chosen) value.value = chosen;
      }}
    >
      {options.map((one) => (
        <option key={one} value={one}>
          {one} {unit}
        </option>
      ))}
    </select>
  );
}
