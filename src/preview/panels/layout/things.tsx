import { items } from '../../state/drag-state.ts';
import { isNear, pointing } from '../../state/pointing.ts';
import { length } from '../../state/show.ts';
import { mold } from '../../state/store.ts';
import { PickButton } from '../pick-button.tsx';
import { Rows } from '../rows.tsx';

/** Everything on the disc; Tab goes through the list, and what has the focus is chosen. */
export function Things() {
  const placed = new Map(mold.value?.placements.map((one) => [one.id, one]));
  return (
    <Rows heads={['On the disc', 'Below', 'Above']}>
      {items.value.map(({ id, kind }, index) => {
        const one = placed.get(id);
        return (
          <tr key={`${kind} ${id}`} class={isNear(id) ? 'is-near' : ''} {...pointing(id)}>
            <td>
              <PickButton id={id} isChosenByFocus>
                {one && `${index + 1} `}
                {one?.estimated ? '~ ' : ''}
                {id}
              </PickButton>
            </td>
            <td class="number">{one && length(Math.max(0, -one.lowest))}</td>
            <td class="number">{one && length(Math.max(0, one.highest))}</td>
          </tr>
        );
      })}
    </Rows>
  );
}
