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
const bottom = 26;

/** A line plot of a series of the report, as it is: no smoothing, axes from zero. */
export function Plot({ series, marks = [], at, onPick }: PlotProps) {
  const { x, y, level } = series;
  const [x0, x1] = [Math.min(...x.values), Math.max(...x.values)];
  const y1 = Math.max(...y.values, level?.y ?? 0) * 1.06 || 1;
  const px = (value: number) => left + ((value - x0) / (x1 - x0 || 1)) * (width - left - 6);
  const py = (value: number) => height - bottom - (value / y1) * (height - bottom - 8);
  const line = x.values.map(
    (value, i) => `${i ? 'L' : 'M'}${px(value).toFixed(1)} ${py(y.values[i]).toFixed(1)}`,
  );
  const pick = (event: PointerEvent) => {
    const box = (event.currentTarget as SVGElement).getBoundingClientRect();
    const share = ((event.clientX - box.left) / box.width) * width;
    onPick?.(Math.min(x1, Math.max(x0, x0 + ((share - left) / (width - left - 6)) * (x1 - x0))));
  };
  return (
    <svg
      class="plot"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`${y.label} in ${y.unit} against ${x.label} in ${x.unit}`}
      onPointerDown={pick}
    >
      <line class="axis" x1={left} y1={py(0)} x2={width - 6} y2={py(0)} />
      <line class="axis" x1={left} y1={8} x2={left} y2={py(0)} />
      {[0, 0.5, 1].map((share) => (
        <text
          key={share}
          class="tick"
          x={px(x0 + share * (x1 - x0))}
          y={height - 12}
          text-anchor={share === 1 ? 'end' : 'middle'}
        >
          {Math.round(x0 + share * (x1 - x0))}
        </text>
      ))}
      {[0.5, 1].map((share) => (
        <text key={share} class="tick" x={left - 4} y={py((share * y1) / 1.06) + 3} text-anchor="end">
          {((share * y1) / 1.06).toPrecision(2)}
        </text>
      ))}
      <text class="tick" x={width - 6} y={height - 1} text-anchor="end">
        {x.label}, {x.unit}
      </text>
      <text class="tick" x={left + 4} y={9}>
        {y.label}, {y.unit}
      </text>
      {level && (
        <>
          <line class="level" x1={left} y1={py(level.y)} x2={width - 6} y2={py(level.y)} />
          <text class="tick" x={width - 8} y={py(level.y) - 3} text-anchor="end">
            {level.says}
          </text>
        </>
      )}
      {marks.map((mark) => (
        <g key={mark.x}>
          <line class="mark" x1={px(mark.x)} y1={8} x2={px(mark.x)} y2={py(0)} />
          <text class="tick" x={px(mark.x) + 3} y={20}>
            {mark.says}
          </text>
        </g>
      ))}
      <path class="curve" d={line.join('')} />
      {at !== undefined && <line class="here" x1={px(at)} y1={8} x2={px(at)} y2={py(0)} />}
    </svg>
  );
}
