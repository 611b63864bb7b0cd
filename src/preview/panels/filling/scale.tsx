import { cssAt } from '../../state/wall-ramp.ts';

const wide = 316;
const [left, right] = [4, 312];
const bandTop = 20;
const bandHeight = 16;
const steps = 48;
const marks = [0, 0.25, 0.5, 0.75, 1];

/** What the colors mean: how full a cavity is when metal comes to a place. */
export function Scale({ hasEmpty }: { readonly hasEmpty: boolean }) {
  const x = (share: number): number => left + (right - left) * share;
  return (
    <>
      <figure class="drawing">
        <svg
          viewBox={`0 0 ${wide} 52`}
          role="img"
          aria-label="Color scale from dark blue, where metal comes first, to light yellow, where it comes last"
        >
          <text class="tick" x={left} y={14}>
            metal comes first
          </text>
          <text class="tick" x={right} y={14} text-anchor="end">
            last
          </text>
          {Array.from({ length: steps }, (_, i) => (
            <rect
              key={i}
              x={x(i / steps)}
              y={bandTop}
              width={(right - left) / steps + 0.4}
              height={bandHeight}
              shape-rendering="crispEdges"
              fill={cssAt((i + 0.5) / steps)}
            />
          ))}
          {marks.map((share) => (
            <text
              key={share}
              class="tick"
              x={x(share)}
              y={bandTop + bandHeight + 12}
              text-anchor={share === 0 ? 'start' : share === 1 ? 'end' : 'middle'}
            >
              {share * 100} %
            </text>
          ))}
        </svg>
      </figure>
      <ul class="fill-key">
        <li>
          <PocketSign stays="all" /> air stays whatever is assumed
        </li>
        <li>
          <PocketSign stays="some" /> air may stay
        </li>
        {hasEmpty && (
          <li>
            <span class="sign is-never" aria-hidden="true" /> metal never comes
          </li>
        )}
      </ul>
    </>
  );
}

/** The mark of a pocket as it is in the picture; said in words for those who do not see it. */
export function PocketSign({ stays }: { readonly stays: 'all' | 'some' }) {
  return <span class={`sign is-${stays}`} aria-hidden="true" />;
}
