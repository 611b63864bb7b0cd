import { items } from '../../state/drag-state.ts';
import { length } from '../../state/show.ts';
import { mold, picked, pointedAt } from '../../state/store.ts';

/** Everything on the disc; Tab goes through the list, and what has the focus is chosen. */
export function Things() {
  const placed = new Map(mold.value?.placements.map((one) => [one.id, one]));
  return (
    <table class="rows">
      <thead>
        <tr>
          <th>On the disc</th>
          <th>Below</th>
          <th>Above</th>
        </tr>
      </thead>
      <tbody>
        {items.value.map(({ id, kind }, index) => {
          const one = placed.get(id);
          return (
            <tr
              key={`${kind} ${id}`}
              class={pointedAt.value === id || picked.value === id ? 'is-near' : ''}
              onPointerEnter={() => {
                pointedAt.value = id;
              }}
              onPointerLeave={() => {
                pointedAt.value = undefined;
              }}
            >
              <td>
                <button
                  type="button"
                  class="plain"
                  aria-pressed={picked.value === id}
                  onFocus={() => {
                    picked.value = id;
                  }}
                  onClick={() => {
                    picked.value = id;
                  }}
                >
                  {one && `${index + 1} `}
                  {one?.estimated ? '~ ' : ''}
                  {id}
                </button>
              </td>
              <td class="number">{one && length(Math.max(0, -one.lowest))}</td>
              <td class="number">{one && length(Math.max(0, one.highest))}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
