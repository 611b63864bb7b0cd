import { shaftRadius } from '../../../mold/index.ts';
import { isNear, pointing } from '../../state/pointing.ts';
import type { Reaching } from '../../state/reaching.ts';
import { length } from '../../state/show.ts';
import type { ShownMold } from '../../worker/messages.ts';

interface SideViewProps {
  readonly mold: ShownMold;
  readonly things: readonly Reaching[];
}

/** The mold from the side, one scale both ways, in mm of the mold: what stands in it is seen through the halves. */
export function SideView({ mold: { disc, sprue }, things }: SideViewProps) {
  const { radius, lower, upper } = disc;
  const grip = sprue?.grip ?? 0;
  const pad = radius * 0.03;
  const hole = sprue && { at: sprue.holeRadius, top: shaftRadius(sprue, upper) };
  return (
    <figure class="drawing">
      <svg
        viewBox={`${-radius - pad} ${-upper - grip - pad} ${2 * (radius + pad)} ${upper + lower + grip + 2 * pad}`}
        role="img"
        aria-label={`The mold from the side, to scale: ${length(2 * radius)} across, upper half ${length(upper)}, lower half ${length(lower)}`}
      >
        <rect class="half" x={-radius} y={-upper} width={2 * radius} height={upper} />
        <rect class="half" x={-radius} y={0} width={2 * radius} height={lower} />
        {hole && (
          <path
            class="hollow"
            d={`M${-hole.at} 0L${-hole.top} ${-upper}V${-upper - grip}H${hole.top}V${-upper}L${hole.at} 0Z`}
          />
        )}
        {things.map(({ id, kind, x, reach, lowest, highest }) => (
          <rect
            key={id}
            class={`reach is-${kind.replace(' ', '-')} ${isNear(id) ? 'is-near' : ''}`}
            x={x - reach}
            y={-highest}
            width={2 * reach}
            height={highest - lowest}
            {...pointing(id)}
          />
        ))}
        <line class="plane" x1={-radius} y1={0} x2={radius} y2={0} />
      </svg>
      <figcaption>From the side, one scale both ways.</figcaption>
    </figure>
  );
}
