import type { Change, TrialSummary } from '../../../trials/index.ts';
import { runs } from '../../../wording/index.ts';
import { quantity } from '../../state/show.ts';
import { Rows } from '../rows.tsx';

/** The log: every pour, the last first, and what was changed before it. */
export function Pours({ summary: { pours } }: { readonly summary: TrialSummary }) {
  return (
    <>
      <h3>The log</h3>
      <Rows heads={['Pour', 'Metal, mold, speed', 'Good']} caption="All pours, the last first">
        {[...pours].reverse().map(({ pour, good, changes }) => (
          <tr key={pour.pour}>
            <td>
              {pour.pour}
              {pour.date !== undefined && `, ${pour.date}`}
              <span class="where">{pour.changed ?? changes.map(changeText).join('; ')}</span>
            </td>
            <td class="number">
              {[
                pour.metalC === undefined ? undefined : quantity(pour.metalC, 'C'),
                pour.moldC === undefined ? undefined : quantity(pour.moldC, 'C'),
                pour.speedRpm === undefined ? undefined : quantity(pour.speedRpm, 'rpm'),
              ]
                .filter((text) => text !== undefined)
                .join(', ')}
            </td>
            <td class="number">{good.of === 0 ? '' : `${Math.round(good.share * good.of)} of ${good.of}`}</td>
          </tr>
        ))}
      </Rows>
    </>
  );
}

const changeText = ({ kind, of }: Change): string => (of ? `${kind}: ${runs(of)}` : kind);
