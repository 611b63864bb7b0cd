import { type Figure, figureCatalogue } from '../../../findings/index.ts';
import { near } from '../../state/near.ts';
import { length, said } from '../../state/show.ts';
import { keyOf } from '../findings.tsx';

/** Walls and covers of the chosen thing, following the hand; under their limit they stand out. */
export function Nearby({ id }: { readonly id: string }) {
  const now = near.value;
  if (now?.id !== id) return <p class="hint">Measuring.</p>;
  const thin = new Set(
    now.findings.flatMap(({ values: { measured } }) =>
      typeof measured === 'number' ? [measured.toFixed(6)] : [],
    ),
  );
  const worst = [...now.figures].sort((a, b) => a.value - b.value);
  return (
    <div class="nearby" data-error={now.error} aria-live="off">
      <table class="rows">
        <tbody>
          {worst.map((one) => (
            <tr key={`${one.name} ${one.subject}`} class={thin.has(one.value.toFixed(6)) ? 'is-thin' : ''}>
              <td title={figureCatalogue[one.name].means}>{nameOf(one, id)}</td>
              <td class="number" data-figure={`${one.name} ${one.subject}`} data-value={one.value}>
                {now.error > 0 ? 'about ' : ''}
                {length(one.value)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">
        {now.error > 0
          ? `While moving: on simplified shapes, within ${length(now.error)}.`
          : 'Exact. Walls farther than twice their limit are left out.'}
      </p>
      {now.findings.map((one) => (
        <p key={keyOf(one)} class={`finding is-${one.severity}`}>
          <strong>{one.severity}</strong> {said(one).says}
        </p>
      ))}
    </div>
  );
}

/** What a figure is about, without the chosen thing's own name. */
function nameOf({ name, subject }: Figure, id: string): string {
  const other = subject.split(' ').filter((part) => part !== id);
  if (other.length === 0) return figureCatalogue[name].label;
  return `Wall to ${other[0] === 'sprue' ? 'the well' : other.join(' ')}`;
}
