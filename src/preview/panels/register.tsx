import { useEffect } from 'preact/hooks';
import type { BossSeat } from '../../mold/index.ts';
import { falseSeats, figure, misfit, seatings, shaken, shakeWay } from '../state/closing.ts';
import { pointing } from '../state/pointing.ts';
import { inTheirUnits, length } from '../state/show.ts';
import { report } from '../state/store.ts';
import { apart, pose, wrongTurn } from '../state/view.ts';
import type { Panel } from './panel.ts';
import { Plot } from './plot.tsx';
import { Rows } from './rows.tsx';

export const register: Panel = {
  id: 'register',
  title: 'Close',
  hint: 'Lower the upper half, turn it, and see whether it closes in one position only.',
  View: () => {
    useEffect(() => {
      pose.value = 'stacked';
      return rest;
    }, []);
    return (
      <>
        <label class="slide">
          Apart
          <input
            type="range"
            min={0}
            max={1}
            step={0.005}
            value={apart.value}
            onInput={({ currentTarget: { value } }) => {
              apart.value = Number(value);
            }}
          />
          <output>{apart.value === 0 ? 'closed' : `${Math.round(apart.value * 100)} %`}</output>
        </label>
        <Turn />
        <Seats />
        <Misfit />
        <Play />
      </>
    );
  },
};

/** Steps a person can set, degrees. */
const turnStep = 0.1;

const turnTo = (degrees: number): void => {
  if (Number.isFinite(degrees)) wrongTurn.value = Math.min(360, Math.max(0, Math.round(degrees * 10) / 10));
};

/** By how much the upper half is turned: roughly by the slider, to a tenth of a degree by the field. */
function Turn() {
  return (
    <div class="slide">
      <label for="turn">Turned by</label>
      <input
        id="turn"
        type="range"
        min={0}
        max={360}
        step={turnStep}
        value={wrongTurn.value}
        onInput={({ currentTarget }) => turnTo(currentTarget.valueAsNumber)}
      />
      <span class="with-unit">
        <input
          type="number"
          aria-label="Turned by, degrees"
          min={0}
          max={360}
          step={turnStep}
          value={wrongTurn.value}
          onChange={({ currentTarget }) => turnTo(currentTarget.valueAsNumber)}
        />
        deg
      </span>
    </div>
  );
}

/** Each boss at this turn and height. */
function Seats() {
  if (seatings.value.length === 0) return null;
  const clashes = seatings.value.some(({ state }) => state === 'clash');
  return (
    <>
      <Rows heads={['Boss', 'Off its socket', 'Now']}>
        {seatings.value.map((seat) => (
          <tr key={seat.id} class={`is-${seat.state.split(' ')[0]}`} {...pointing(seat.id)}>
            <td>{seat.id}</td>
            <td class="number">{length(seat.off)}</td>
            <td class="number">{stateOf(seat)}</td>
          </tr>
        ))}
      </Rows>
      {clashes && (
        <p class="remark">
          A clash is as deep as the upper half would have to be raised there to be clear. Bosses are held to
          sockets and the parting plane; cavities and channels are left out.
        </p>
      )}
    </>
  );
}

const stateOf = ({ state, clash }: BossSeat): string =>
  state === 'clash' ? `clash, ${length(clash)}` : state;

let turning: ReturnType<typeof setInterval> | undefined;
let shaker: ReturnType<typeof setInterval> | undefined;

/** Ends what moves by itself. */
function rest(): void {
  clearInterval(turning);
  clearInterval(shaker);
  turning = undefined;
  shaker = undefined;
  shakeWay.value = 0;
}

/** Turns the upper half once round, four degrees a step. */
function tryEveryTurn(): void {
  rest();
  wrongTurn.value = 0;
  turning = setInterval(() => {
    wrongTurn.value = Math.min(360, wrongTurn.value + 4);
    if (wrongTurn.value >= 360) rest();
  }, 80);
}

function Misfit() {
  const series = misfit.value;
  if (!series) return <p>No pattern of bosses to try yet.</p>;
  const seat = figure('registration.falseSeatAngle');
  const least = figure('registration.falseSeat');
  return (
    <>
      <h3>Every turn</h3>
      <p>
        <button type="button" onClick={tryEveryTurn}>
          Try every turn
        </button>
      </p>
      <Plot
        series={inTheirUnits(series)}
        at={wrongTurn.value}
        marks={falseSeats.value.map((x, index) => ({ x, says: index === 0 ? 'nearest false seat' : '' }))}
        onPick={(angle) => {
          rest();
          turnTo(angle);
        }}
      />
      {seat !== undefined && least !== undefined && (
        <p>
          Nearest false seat: turned by {seat.toFixed(1)} deg some boss is still {length(least)} off.
        </p>
      )}
    </>
  );
}

function shake(): void {
  const isOn = shakeWay.value !== 0;
  rest();
  if (isOn) return;
  wrongTurn.value = 0;
  apart.value = 0;
  shakeWay.value = 1;
  // Who asked the system for less motion sees one end of the play, at rest.
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) return;
  shaker = setInterval(() => {
    shakeWay.value = shakeWay.value === 1 ? -1 : 1;
  }, 700);
}

/** What the play of the bosses does at each cavity. */
function Play() {
  const how = shaken.value;
  if (!how) return null;
  const steps = report.value?.figures.filter(({ name }) => name === 'registration.mismatch') ?? [];
  return (
    <>
      <h3>Play</h3>
      <p>
        <button type="button" aria-pressed={shakeWay.value !== 0} onClick={shake}>
          Shake
        </button>{' '}
        The upper half can shift by {length(how.shift)}; drawn {how.factor} times as large.
      </p>
      <Rows heads={['Cavity', 'Step at the parting line']}>
        {steps.map(({ subject, value, estimated }) => (
          <tr key={subject}>
            <td>{subject}</td>
            <td class="number">
              {estimated ? '~ ' : ''}
              {length(value)}
            </td>
          </tr>
        ))}
      </Rows>
    </>
  );
}
