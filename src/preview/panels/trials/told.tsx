import type { Share, TrialSummary, Told as What } from '../../../trials/index.ts';
import { requestTold } from '../../state/actions.ts';
import { forecasts, mold, solidsAreCurrent, step } from '../../state/store.ts';
import { Rows } from '../rows.tsx';

const told: Readonly<Record<What, string>> = {
  all: 'Air stays',
  some: 'Air may stay',
  none: 'It fills',
};

/** Yield of each master, and how often the forecast was right. */
export function Told({ summary }: { readonly summary: TrialSummary }) {
  const { byMaster, hits = [], bonds } = summary;
  return (
    <>
      <h3>Good castings</h3>
      <Rows heads={['Master', 'Castings', 'Good (range)']} caption="Yield of each master">
        {[...byMaster].map(([master, share]) => (
          <ShareRow key={master} name={master} share={share} />
        ))}
      </Rows>
      <h3>Was the forecast right?</h3>
      {forecasts.value ? (
        <Rows heads={['It said', 'Castings', 'Short or porous']} caption="How often the forecast was right">
          {hits
            .filter(({ failed }) => failed.of > 0)
            .map((one) => (
              <ShareRow key={one.told} name={told[one.told]} share={one.failed} />
            ))}
        </Rows>
      ) : (
        <div class="row">
          <button
            type="button"
            disabled={!solidsAreCurrent.value || step.value !== undefined || !mold.value}
            onClick={requestTold}
          >
            Hold against the forecast
          </button>
          <span class="remark">Takes a while; some proposals need it.</span>
        </div>
      )}
      {bonds && (
        <p class="remark">
          Bond number of narrow places by {bonds.castings} castings: {bonds.low.toFixed(1)} to{' '}
          {bonds.high.toFixed(1)}, likeliest {bonds.likeliest.toFixed(1)}. Only shown: the forecast keeps its
          own range.
        </p>
      )}
    </>
  );
}

function ShareRow({ name, share }: { readonly name: string; readonly share: Share }) {
  const percent = (value: number): string => (100 * value).toFixed(0);
  return (
    <tr>
      <td>{name}</td>
      <td class="number">{share.of}</td>
      <td class="number">
        {share.of === 0
          ? 'none'
          : `${percent(share.share)} % (${percent(share.low)} to ${percent(share.high)})`}
      </td>
    </tr>
  );
}
