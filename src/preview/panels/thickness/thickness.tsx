import { isNear, pointing } from '../../state/pointing.ts';
import { leastCover, nextStock, type Reaching, reaching } from '../../state/reaching.ts';
import { length } from '../../state/show.ts';
import { mold, picked } from '../../state/store.ts';
import type { Panel } from '../panel.ts';
import { Rows } from '../rows.tsx';
import { HeightBars } from './height-bars.tsx';
import { SideView } from './side-view.tsx';

export const thickness: Panel = {
  id: 'thickness',
  title: 'Thickness',
  hint: 'How far all that stands into each half reaches from the parting plane, and how much is left over it.',
  View: () => {
    const now = mold.value;
    if (!now) return <p>Reading the plan.</p>;
    return (
      <>
        <SideView mold={now} things={reaching.value} />
        <HeightBars mold={now} things={reaching.value} />
        <Stock half="upper" now={now.disc.upper} />
        <Stock half="lower" now={now.disc.lower} />
        <CoverTable things={reaching.value} limit={now.limits.cover} />
      </>
    );
  },
};

/** The thinnest stock that would do, and what asks for it. */
function Stock({ half, now }: { readonly half: 'lower' | 'upper'; readonly now: number }) {
  const next = nextStock(half);
  if (!next) return null;
  const { thickness: wanted, drivenBy } = next;
  const verdict = wanted > now + 1e-6 ? 'needs' : wanted < now - 1e-6 ? 'would do with' : 'is rightly';
  return (
    <p class={wanted > now + 1e-6 ? 'withheld' : 'remark'}>
      The {half} half of {length(now)} {verdict} {length(wanted)} stock: {drivenBy} reaches farthest into it.
    </p>
  );
}

function CoverTable({ things, limit }: { readonly things: readonly Reaching[]; readonly limit: number }) {
  return (
    <Rows
      heads={['Stands in', 'Below plane', 'Above plane', 'Cover']}
      caption="Depth below and height above the parting plane, and least cover"
    >
      {things.map((one) => (
        <CoverRow key={one.id} one={one} limit={limit} />
      ))}
    </Rows>
  );
}

function CoverRow({ one, limit }: { readonly one: Reaching; readonly limit: number }) {
  const { id, lowest, highest, estimated } = one;
  const cover = leastCover(one);
  const isThin = cover !== undefined && cover < limit;
  const { onPointerEnter, onPointerLeave } = pointing(id);
  return (
    <tr class={isNear(id) ? 'is-near' : ''} onPointerEnter={onPointerEnter} onPointerLeave={onPointerLeave}>
      <td>
        <button
          type="button"
          class="plain"
          onFocus={onPointerEnter}
          onBlur={onPointerLeave}
          onClick={() => {
            picked.value = id;
          }}
        >
          {estimated ? '~ ' : ''}
          {id}
        </button>
      </td>
      <td class="number">{length(Math.max(0, -lowest))}</td>
      <td class="number">{length(Math.max(0, highest))}</td>
      <td class={`number ${isThin ? 'is-thin' : ''}`}>
        {cover === undefined ? '' : length(cover)}
        {isThin ? ' !' : ''}
      </td>
    </tr>
  );
}
