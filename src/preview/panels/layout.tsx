import { length } from '../state/show.ts';
import { mold, picked, pointedAt } from '../state/store.ts';
import type { Panel } from './panel.ts';

export const layout: Panel = {
  id: 'layout',
  title: 'Lay out',
  hint: 'Disc, masters and bosses as the plan has them.',
  View: () => {
    const now = mold.value;
    if (!now) return <p>Reading the plan.</p>;
    const { disc, placements } = now;
    return (
      <>
        <dl class="facts">
          <dt>Disc</dt>
          <dd>{length(2 * disc.radius)} across</dd>
          <dt>Lower half</dt>
          <dd>{length(disc.lower)}</dd>
          <dt>Upper half</dt>
          <dd>{length(disc.upper)}</dd>
        </dl>
        {placements.length > 0 && (
          <table class="rows">
            <thead>
              <tr>
                <th>Master</th>
                <th>Below</th>
                <th>Above</th>
              </tr>
            </thead>
            <tbody>
              {placements.map(({ id, lowest, highest, estimated }, index) => (
                <tr
                  key={id}
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
                      onClick={() => {
                        picked.value = id;
                      }}
                    >
                      {index + 1} {estimated ? '~ ' : ''}
                      {id}
                    </button>
                  </td>
                  <td class="number">{length(Math.max(0, -lowest))}</td>
                  <td class="number">{length(Math.max(0, highest))}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </>
    );
  },
};
