import { toDegrees } from '../../../geometry/index.ts';
import { bossSpace } from '../../../mold/index.ts';
import { isNear, pointing } from '../../state/pointing.ts';
import { quantity } from '../../state/show.ts';
import type { ShownUnbalance } from '../../state/unbalance.ts';
import type { ShownMold } from '../../worker/messages.ts';

interface DiscFromAboveProps {
  readonly mold: ShownMold;
  readonly found: ShownUnbalance;
}

/** The lower parting face from above, to scale, with the heavy side as an arrow and what is allowed as a circle. */
export function DiscFromAbove({
  mold: { disc, sprue, placements, bosses, process },
  found,
}: DiscFromAboveProps) {
  const { radius } = disc;
  const pad = radius * 0.09;
  const { sizeGmm, angleRad, allowedGmm, scale } = found;
  const length = sizeGmm * scale;
  const degrees = toDegrees(angleRad);
  const isOver = allowedGmm !== undefined && sizeGmm > allowedGmm;
  return (
    <figure class="drawing">
      <svg
        viewBox={`${-radius - pad} ${-radius - pad} ${2 * (radius + pad)} ${2 * (radius + pad)}`}
        role="img"
        aria-label={`The disc from above. Out of balance by ${quantity(sizeGmm, 'g.mm')} at ${degrees.toFixed(0)} degrees${allowedGmm === undefined ? '' : `; ${quantity(allowedGmm, 'g.mm')} allowed`}`}
      >
        <circle class="half" r={radius} />
        <path class="plane" d={`M${radius} 0H${radius + pad * 0.6}`} />
        {sprue && <circle class="hollow" r={sprue.wellRadius} />}
        {placements.map(({ id, x, y, reach }) => (
          <Round key={id} id={id} kind="master" x={x} y={y} reach={reach} />
        ))}
        {bosses.map((boss) => (
          <Round
            key={boss.id}
            id={boss.id}
            kind="boss"
            x={boss.x}
            y={boss.y}
            reach={bossSpace(boss, process).reach}
          />
        ))}
        {allowedGmm !== undefined && <circle class="allowed" r={allowedGmm * scale} />}
        {/* Angles count against the clock from above; on the screen y points down. */}
        <g class={`heavy ${isOver ? 'is-over' : ''}`} transform={`rotate(${-degrees})`}>
          <line x1={0} y1={0} x2={length} y2={0} />
          <path d={`M${length} 0l${-radius * 0.07} ${radius * 0.035}v${-radius * 0.07}z`} />
        </g>
        <circle class="axis-point" r={radius * 0.012} />
        <g class="correction" transform={`rotate(${180 - degrees})`}>
          <path d={`M${radius} 0l${pad * 0.8} ${pad * 0.4}v${-pad * 0.8}z`} />
        </g>
      </svg>
      <figcaption>
        From above; the tick on the right is the index mark. The wedge outside the rim: where a mass would put
        it right.
      </figcaption>
    </figure>
  );
}

interface RoundProps {
  readonly id: string;
  readonly kind: 'master' | 'boss';
  readonly x: number;
  readonly y: number;
  readonly reach: number;
}

function Round({ id, kind, x, y, reach }: RoundProps) {
  return (
    <circle
      class={`reach is-${kind} ${isNear(id) ? 'is-near' : ''}`}
      cx={x}
      cy={-y}
      r={reach}
      {...pointing(id)}
    />
  );
}
