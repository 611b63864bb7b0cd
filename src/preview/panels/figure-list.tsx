import { type FigureName, figureCatalogue } from '../../findings/index.ts';
import { figureOf } from '../state/figures.ts';
import { quantity } from '../state/show.ts';

/** Figures about the whole mold, those the report has; a wave before what is only estimated. */
export function FigureList({ names }: { readonly names: readonly FigureName[] }) {
  const found = names.map((name) => figureOf(name)).filter((one) => one !== undefined);
  return (
    <dl class="facts">
      {found.map(({ name, value, unit, estimated, source, by }) => (
        <div key={name} title={`${figureCatalogue[name].means} Source: ${source}.`}>
          <dt>
            {figureCatalogue[name].label}
            {by && ` (${figureCatalogue[by].label})`}
          </dt>
          <dd>
            {estimated ? '~ ' : ''}
            {quantity(value, unit)}
          </dd>
        </div>
      ))}
    </dl>
  );
}
