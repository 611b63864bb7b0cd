import {
  amountOf,
  freedBy,
  type LikeCavities,
  likeCavities,
  type ShownPocket,
  shownOf,
  showPocket,
} from '../../state/filling.ts';
import { isNear, pointing } from '../../state/pointing.ts';
import { reportIsCurrent } from '../../state/store.ts';
import { PickButton } from '../pick-button.tsx';
import { PocketSign } from './scale.tsx';

/** Where air stays: cavity by cavity, the worst first, and in each the largest pocket first. */
export function Pockets() {
  const list = likeCavities.value;
  if (list.length === 0)
    return <p class="remark">{reportIsCurrent.value ? 'No air stays.' : 'Not known yet.'}</p>;
  return (
    <div class={reportIsCurrent.value ? '' : 'is-stale'}>
      {list.map((like) => (
        <Cavities key={like.subjects[0]} like={like} />
      ))}
    </div>
  );
}

function Cavities({ like }: { readonly like: LikeCavities }) {
  const { subject, pockets } = shownOf(like);
  const others = like.subjects.length - 1;
  return (
    <section class="cavity" aria-label={`Air in ${subject}`}>
      <h4 class={isNear(subject) ? 'is-near' : ''} {...pointing(subject)}>
        {subject}
        {others > 0 && <Alike like={like} others={others} />}
      </h4>
      <ol class="pockets">
        {pockets.map((pocket) => (
          <PocketRow key={pocket.place.join(' ')} pocket={pocket} />
        ))}
      </ol>
    </section>
  );
}

/** The other cavities that fill the same way; one of them can be looked at instead. */
function Alike({ like, others }: { readonly like: LikeCavities; readonly others: number }) {
  return (
    <details class="alike">
      <summary>and {others} like it</summary>
      <ul class="names">
        {like.subjects.map((id) => (
          <li key={id}>
            <PickButton id={id} />
          </li>
        ))}
      </ul>
    </details>
  );
}

function PocketRow({ pocket }: { readonly pocket: ShownPocket }) {
  return (
    <li>
      <button type="button" class="plain" onClick={() => showPocket(pocket)}>
        <PocketSign stays={pocket.stays} />
        <span class="amount">
          {amountOf(pocket)} {pocket.stays === 'all' ? 'stay' : 'may stay'}
        </span>
        <span class="subject">{freedBy(pocket)}</span>
      </button>
    </li>
  );
}
