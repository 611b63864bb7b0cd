import { mmPerInch } from '../../../geometry/index.ts';
import { fixed } from '../../../wording/index.ts';
import { mold } from '../../state/store.ts';
import { cssAt } from '../../state/wall-ramp.ts';
import { scaleEnd, scaleParts } from '../../state/walls.ts';

const wide = 316;
const [left, right] = [10, 306];
const bandTop = 38;
const bandHeight = 16;
const steps = 48;

/** What the colors mean: mm above, inch below, and where the least distances of the plan lie. */
export function Scale() {
  const end = scaleEnd.value;
  const limits = mold.value?.limits;
  const x = (mm: number): number => left + ((right - left) * mm) / end;
  const inches = Array.from({ length: Math.floor(end / mmPerInch / (1 / 8)) + 1 }, (_, i) => i / 8);
  return (
    <figure class="drawing">
      <svg
        viewBox={`0 0 ${wide} 74`}
        role="img"
        aria-label={`Color scale from 0, dark blue, to ${fixed(end, 0)} mm (${fixed(end / mmPerInch, 2)} in) and more, light yellow`}
      >
        <Band />
        {Array.from({ length: scaleParts + 1 }, (_, part) => (
          <text
            key={x(part)}
            class="tick"
            x={x((part * end) / scaleParts) - (part === 1 ? 3 : 0)}
            y={bandTop - 4}
            text-anchor={anchor(part)}
          >
            {fixed((part * end) / scaleParts, end < 3 * scaleParts ? 1 : 0)}
            {part === 0 ? ' mm' : part === scaleParts ? ' +' : ''}
          </text>
        ))}
        {inches.map((inch) => (
          <text
            key={inch}
            class="tick"
            x={x(inch * mmPerInch)}
            y={bandTop + bandHeight + 12}
            text-anchor={inch === 0 ? 'start' : 'middle'}
          >
            {inch === 0 ? '0' : `${fixed(inch, 3)}${inch === 1 / 8 ? ' in' : ''}`}
          </text>
        ))}
        {limits && (
          <>
            <line class="limit" x1={x(limits.wall)} y1={8} x2={x(limits.wall)} y2={bandTop + bandHeight} />
            <text class="tick" x={x(limits.wall) + 3} y={12} dominant-baseline="middle">
              least wall of the plan
            </text>
          </>
        )}
      </svg>
    </figure>
  );
}

function Band() {
  return (
    <>
      {Array.from({ length: steps }, (_, i) => (
        <rect
          key={i}
          x={left + ((right - left) * i) / steps}
          y={bandTop}
          width={(right - left) / steps + 0.4}
          height={bandHeight}
          shape-rendering="crispEdges"
          fill={cssAt((i + 0.5) / steps)}
        />
      ))}
    </>
  );
}

/** Words at the ends stay within; the one at the limit leaves its line free. */
const anchor = (at: number): 'start' | 'middle' | 'end' =>
  at === 0 ? 'start' : at === 1 || at === scaleParts ? 'end' : 'middle';
