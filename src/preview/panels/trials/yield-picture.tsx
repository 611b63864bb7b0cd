import { type YieldCell, yieldCells, yieldSteps } from '../../../trials/index.ts';
import { isNear, pointing } from '../../state/pointing.ts';
import { markCavity, marks } from '../../state/pour-entry.ts';
import { mold } from '../../state/store.ts';
import { trials } from '../../state/trial-log.ts';

/** The disc from above, each cavity with how many came out good of those looked at. A press notes the fault in hand. */
export function YieldPicture() {
  const now = mold.value;
  if (!now) return null;
  const { radius } = now.disc;
  const pad = radius * 0.04;
  const cells = yieldCells(now.placements, trials.value?.byCavity ?? new Map());
  return (
    <figure class="drawing yield">
      {/* biome-ignore lint/a11y/useSemanticElements: a group of buttons drawn on the disc */}
      <svg
        viewBox={`${-radius - pad} ${-radius - pad} ${2 * (radius + pad)} ${2 * (radius + pad)}`}
        role="group"
        aria-label="The disc from above: good castings of each cavity. Press one to note a fault."
      >
        <circle class="half" r={radius} />
        <path class="plane" d={`M${radius} 0H${radius + pad}`} />
        {now.sprue && <circle class="hollow" r={now.sprue.wellRadius} />}
        {cells.map((cell) => (
          <Cell key={cell.id} cell={cell} radius={radius} />
        ))}
      </svg>
      <figcaption>
        <Key />
        Good castings of those looked at. The tick on the right is the index mark.
      </figcaption>
    </figure>
  );
}

function Cell({ cell, radius }: { readonly cell: YieldCell; readonly radius: number }) {
  const { id, x, y, reach, number, fill, ink } = cell;
  const mark = marks.value.get(id);
  const press = (): void => markCavity(id);
  const words = number === '' ? 'not looked at yet' : `${number} good`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: within a drawing there is no button
    <g
      role="button"
      tabindex={0}
      aria-pressed={mark !== undefined}
      aria-label={`${id}: ${words}${mark ? `; now ${mark.came}` : ''}`}
      class={`yield-cell ${isNear(id) ? 'is-near' : ''} ${mark ? 'is-marked' : ''} ${fill ? '' : 'is-unseen'}`}
      transform={`translate(${x} ${-y})`}
      onClick={press}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        press();
      }}
      {...pointing(id)}
    >
      <circle r={reach} {...(fill && { fill })} />
      {number !== '' && (
        <text fill={ink} font-size={Math.min(radius * 0.075, reach * 0.7)}>
          {number}
        </text>
      )}
    </g>
  );
}

function Key() {
  return (
    <span class="yield-key">
      {yieldSteps.map(({ says, fill }) => (
        <span key={says}>
          <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
            <rect width="12" height="12" fill={fill} />
          </svg>
          {says}
        </span>
      ))}
    </span>
  );
}
