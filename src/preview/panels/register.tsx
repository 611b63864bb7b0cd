import { length } from '../state/show.ts';
import { report } from '../state/store.ts';
import { apart, wrongTurn } from '../state/view.ts';
import type { Panel } from './panel.ts';
import { Plot } from './plot.tsx';

export const register: Panel = {
  id: 'register',
  title: 'Close',
  hint: 'Lower the upper half, turn it, and see whether it closes in one position only.',
  View: () => (
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
      <label class="slide">
        Turned by
        <input
          type="range"
          min={0}
          max={360}
          step={0.5}
          value={wrongTurn.value}
          onInput={({ currentTarget: { value } }) => {
            wrongTurn.value = Number(value);
          }}
        />
        <output>{wrongTurn.value.toFixed(1)} deg</output>
      </label>
      <Misfit />
    </>
  ),
};

function Misfit() {
  const series = report.value?.series.find(({ name }) => name === 'registration.misfit');
  if (!series) return <p>No pattern of bosses to try yet.</p>;
  const figure = (name: string) => report.value?.figures.find((one) => one.name === name)?.value;
  const seat = figure('registration.falseSeatAngle');
  const misfit = figure('registration.falseSeat');
  return (
    <>
      <Plot
        series={series}
        at={wrongTurn.value}
        marks={seat === undefined ? [] : [{ x: seat, says: 'nearest false seat' }]}
        onPick={(angle) => {
          wrongTurn.value = Math.round(angle * 2) / 2;
        }}
      />
      {seat !== undefined && misfit !== undefined && (
        <p>
          Nearest false seat: turned by {seat.toFixed(1)} deg some boss is still {length(misfit)} off.
        </p>
      )}
    </>
  );
}
