import { type Severity, severities } from '../../findings/index.ts';
import { findings, mold, plan, reportIsCurrent, unread } from '../state/store.ts';
import { light, openPanel, units, warmth } from '../state/view.ts';
import { Choice } from './choice.tsx';
import { OpenFiles } from './open-files.tsx';
import { PlanBar } from './plan-bar.tsx';

export function Header() {
  return (
    <header class="head">
      <h1>{mold.value?.title ?? plan.value?.name ?? 'discwright'}</h1>
      <Verdict />
      <PlanBar />
      <div class="head-choices">
        <OpenFiles />
        <Choice label="Lengths" value={units} options={['mm', 'in']} />
        <Choice label="Temperatures" value={warmth} options={['C', 'F']} />
        <Choice label="Light" value={light} options={['as the system', 'light', 'dark']} />
      </div>
    </header>
  );
}

/** How many findings of each weight there are; opens their list. */
function Verdict() {
  const count = (severity: Severity) => findings.value.filter((one) => one.severity === severity).length;
  const worst = severities.find((severity) => count(severity) > 0);
  const pending = unread.value.length === 0 && !reportIsCurrent.value;
  return (
    <button
      type="button"
      class={`verdict ${worst === 'stop' || worst === 'warn' ? `is-${worst}` : 'is-fine'}`}
      aria-busy={pending}
      onClick={() => {
        openPanel.value = 'findings';
      }}
    >
      {pending ? 'checking' : severities.map((severity) => `${count(severity)} ${severity}`).join(', ')}
    </button>
  );
}
