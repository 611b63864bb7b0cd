import { useState } from 'preact/hooks';
import { figureOf, figuresOf } from '../state/figures.ts';
import { pointing } from '../state/pointing.ts';
import { inTheirUnits, inUnits, length, quantity } from '../state/show.ts';
import { mold, pointedAt, report } from '../state/store.ts';
import { FigureList } from './figure-list.tsx';
import { FindingsAbout } from './findings-about.tsx';
import type { Panel } from './panel.ts';
import { Plot } from './plot.tsx';
import { Rows } from './rows.tsx';

export const spin: Panel = {
  id: 'spin',
  title: 'Spin',
  hint: 'How hard the metal presses, from the axis outward, at the speed of the plan.',
  View: () => {
    const speed = mold.value?.bench.spin?.speedRpm;
    return (
      <>
        {speed !== undefined && (
          <p>
            At {quantity(speed, 'rpm')}. {pouring()}
          </p>
        )}
        <Pressure />
        <Cavities />
        <FigureList
          names={[
            'pressure.surface',
            'pressure.opening',
            'speed.least',
            'speed.most',
            'speed.machine',
            'speed.spills',
            'speed.opens',
            'speed.strains',
            'speed.grade',
            'shot.least',
            'shot.most',
            'spin.rimSpeed',
            'spin.stress',
            'spin.factor',
            'spin.burst',
          ]}
        />
        <FindingsAbout families={['shot', 'spin']} />
        <p class="remark">
          Only behind a closed, interlocked guard; the limits of the machine's maker and local codes come
          first.
        </p>
      </>
    );
  },
};

function pouring(): string {
  const pour = mold.value?.bench.alloy?.pourC;
  return pour === undefined ? '' : `The metal is poured at ${quantity(pour, 'C')}.`;
}

function Pressure() {
  const [at, setAt] = useState<number>();
  const series = report.value?.series.find(({ name }) => name === 'pressure.radius');
  if (!series) return <p>Pressure is not known yet: it needs alloy, sprue, speed and shot.</p>;
  const surface = figureOf('pressure.surface')?.value;
  const shown = inTheirUnits(series);
  const marks =
    surface === undefined || surface === 0 ? [] : [{ x: inUnits(surface, 'mm').value, says: 'free surface' }];
  return (
    <>
      <Plot series={shown} marks={marks} {...(at !== undefined && { at })} onPick={setAt} />
      {at !== undefined && <p class="remark">{saidAt(shown, at)}</p>}
    </>
  );
}

/** The point of the plot nearest to a place on its x axis. */
function saidAt({ x, y }: ReturnType<typeof inTheirUnits>, at: number): string {
  let nearest = 0;
  for (let i = 1; i < x.values.length; i++) {
    if (Math.abs(x.values[i] - at) < Math.abs(x.values[nearest] - at)) nearest = i;
  }
  return `${x.values[nearest].toFixed(2)} ${x.unit} from the axis: ${y.values[nearest].toFixed(2)} ${y.unit}.`;
}

/** Pressure at both ends of each cavity. */
function Cavities() {
  const inner = figuresOf('pressure.inner');
  if (inner.length === 0) return null;
  return (
    <Rows
      heads={['Cavity', 'Inner end', 'Outer end', 'Finest']}
      caption="Pressure at the ends of each cavity"
    >
      {inner.map(({ subject, value, unit }) => {
        const outer = figureOf('pressure.outer', subject);
        const detail = figureOf('pressure.detail', subject);
        return (
          <tr key={subject} class={pointedAt.value === subject ? 'is-near' : ''} {...pointing(subject)}>
            <td>{subject}</td>
            <td class="number">{quantity(value, unit)}</td>
            <td class="number">{outer ? quantity(outer.value, outer.unit) : ''}</td>
            <td class="number">{detail ? length(detail.value) : ''}</td>
          </tr>
        );
      })}
    </Rows>
  );
}
