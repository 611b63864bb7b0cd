import type { ShownAxis, ShownLevel } from '../state/show.ts';

interface PlotProps {
  /** With a level line where the series has a limit. */
  readonly series: { readonly x: ShownAxis; readonly y: ShownAxis; readonly level?: ShownLevel };
  /** Upright lines with a word: a place on the x axis. */
  readonly marks?: readonly { readonly x: number; readonly says: string }[];
  /** Where along x the person is. */
  readonly at?: number;
  readonly onPick?: (x: number) => void;
}

const width = 320;
const height = 150;
const left = 34;
const right = 12;
const bottom = 28;
/** The curve does not touch the top. */
const headroom = 1.06;

/** Round numbers on an axis, three to five of them: of degrees quarters of a turn, else by 1, 2 or 5. */
function steps(from: number, to: number, unit: string): number[] {
  if (!(to > from)) return [from];
  const about = (to - from) / 4;
  const ten = 10 ** Math.floor(Math.log10(about));
  const step = unit === 'deg' && to === 360 ? 90 : ([1, 2, 5].find((one) => one * ten >= about) ?? 10) * ten;
  const first = Math.ceil(from / step);
  const count = Math.floor(to / step + 1e-9) - first + 1;
  return Array.from({ length: count }, (_, i) => (first + i) * step);
}

/** Steps to cross the plot by arrow keys; with Shift ten times as many. */
const keySteps = 90;

/** Where along x a key leads to. */
function keyTo({ key, shiftKey }: KeyboardEvent, at: number, from: number, to: number): number | undefined {
  const step = (to - from) / (shiftKey ? 10 * keySteps : keySteps);
  if (key === 'ArrowRight' || key === 'ArrowUp') return at + step;
  if (key === 'ArrowLeft' || key === 'ArrowDown') return at - step;
  if (key === 'Home') return from;
  return key === 'End' ? to : undefined;
}

interface AxesProps {
  readonly x: ShownAxis;
  readonly y: ShownAxis;
  readonly px: (value: number) => number;
  readonly py: (value: number) => number;
  /** Ends of the x axis, and the upper one of y. */
  readonly range: readonly [x0: number, x1: number, y1: number];
}

function Axes({ x, y, px, py, range: [x0, x1, y1] }: AxesProps) {
  return (
    <>
      <line class="axis" x1={left} y1={py(0)} x2={width - right} y2={py(0)} />
      <line class="axis" x1={left} y1={8} x2={left} y2={py(0)} />
      {steps(x0, x1, x.unit).map((value) => (
        <text key={value} class="tick" x={px(value)} y={height - 14} text-anchor="middle">
          {Number(value.toFixed(6))}
        </text>
      ))}
      {steps(0, y1 / headroom, y.unit)
        .slice(1)
        .map((value) => (
          <text key={value} class="tick" x={left - 4} y={py(value) + 3} text-anchor="end">
            {Number(value.toFixed(6))}
          </text>
        ))}
      <text class="tick" x={width - right} y={height - 3} text-anchor="end">
        {x.label}, {x.unit}
      </text>
      <text class="tick is-over" x={left + 4} y={10}>
        {y.label}, {y.unit}
      </text>
    </>
  );
}

/** A line plot of a series of the report, as it is: no smoothing, axes from zero. */
export function Plot({ series, marks = [], at, onPick }: PlotProps) {
  const { x, y, level } = series;
  const [x0, x1] = [Math.min(...x.values), Math.max(...x.values)];
  const y1 = Math.max(...y.values, level?.y ?? 0) * headroom || 1;
  const px = (value: number) => left + ((value - x0) / (x1 - x0 || 1)) * (width - left - right);
  const py = (value: number) => height - bottom - (value / y1) * (height - bottom - 8);
  const line = x.values.map(
    (value, i) => `${i ? 'L' : 'M'}${px(value).toFixed(1)} ${py(y.values[i]).toFixed(1)}`,
  );
  const shownX = at ?? x0;
  const onKey = (event: KeyboardEvent) => {
    const to = keyTo(event, shownX, x0, x1);
    if (to === undefined) return;
    event.preventDefault();
    onPick?.(Math.min(x1, Math.max(x0, to)));
  };
  const pick = (event: PointerEvent) => {
    const box = (event.currentTarget as SVGElement).getBoundingClientRect();
    const share = ((event.clientX - box.left) / box.width) * width;
    onPick?.(Math.min(x1, Math.max(x0, x0 + ((share - left) / (width - left - right)) * (x1 - x0))));
  };
  return (
    <svg
      class="plot"
      viewBox={`0 0 ${width} ${height}`}
      aria-label={`${y.label} in ${y.unit} against ${x.label} in ${x.unit}`}
      {...(onPick
        ? {
            role: 'slider',
            tabindex: 0,
            'aria-valuemin': x0,
            'aria-valuemax': x1,
            'aria-valuenow': shownX,
            'aria-valuetext': `${Number(shownX.toFixed(2))} ${x.unit}`,
            onPointerDown: pick,
            onKeyDown: onKey,
          }
        : { role: 'img' })}
    >
      <Axes x={x} y={y} px={px} py={py} range={[x0, x1, y1]} />
      <path class="curve" d={line.join('')} />
      {level && (
        <>
          <line class="level" x1={left} y1={py(level.y)} x2={width - right} y2={py(level.y)} />
          <text class="tick is-over" x={width - right - 2} y={py(level.y) - 3} text-anchor="end">
            {level.says}
          </text>
        </>
      )}
      {marks.map((mark) => (
        <g key={mark.x}>
          <line class="mark" x1={px(mark.x)} y1={8} x2={px(mark.x)} y2={py(0)} />
          <text class="tick is-over" x={px(mark.x) + 3} y={22}>
            {mark.says}
          </text>
        </g>
      ))}
      {at !== undefined && <line class="here" x1={px(at)} y1={8} x2={px(at)} y2={py(0)} />}
    </svg>
  );
}
