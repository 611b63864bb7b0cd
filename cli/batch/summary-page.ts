import { overviewPath } from '../../src/export/index.ts';
import { figureCatalogue, type UnitSystem } from '../../src/findings/index.ts';
import { readQuantity } from '../../src/plan/index.ts';
import { showFigure } from '../../src/wording/index.ts';
import { keyFigures, keyLabel } from './key-figures.ts';
import { pageScript, pageStyle } from './summary-look.ts';
import type { SummaryWriter } from './summary-writer.ts';
import { type OpenFinding, type RowFigure, settingOf, stateOf, type VariantRow } from './variant-row.ts';

/** batch-summary.html: one page that needs nothing but the variants' folders beside it. */
export const summaryPage: SummaryWriter = {
  file: 'batch-summary.html',
  head: (paths, title) => {
    const heads = [
      'variant',
      ...paths,
      'state',
      'open findings',
      'solids',
      'withheld',
      ...keyFigures.map(keyLabel),
    ];
    return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>${pageStyle}</style>
</head>
<body>
<main>
<h1>${escaped(title)}</h1>
<p>A button over a column sorts by it; pressed again, the other way round. Figures marked ~ are estimated.</p>
<div class="sheet" tabindex="0" role="region" aria-label="Variants">
<table>
<thead><tr><th scope="col">picture</th>${heads.map(head).join('')}</tr></thead>
<tbody>
`;
  },
  row: (row, paths) => {
    const found = (name: string) => row.figures.find((one) => one.name === name);
    const cells = [
      ...paths.map((path) => settingCell(settingOf(row, path))),
      stateCell(row),
      `<td data-sort="${row.stops * 1000 + row.warnings}">${openList(row.open)}</td>`,
      numberCell(row.solids),
      numberCell(row.withheld),
      ...keyFigures.map(({ name }) => figureCell(found(name), row.units)),
    ];
    const name = `<th scope="row" data-sort="${escaped(row.name)}"><a href="${folderLink(row)}">${escaped(row.name)}</a></th>`;
    return `<tr><td>${picture(row)}</td>${name}${cells.join('')}</tr>\n`;
  },
  foot: () => `</tbody>
</table>
</div>
<p>Molten metal, spinning discs, hot presses and clamped cans hurt people. These figures do not make a machine safe:
local codes, the makers of machine, rubber and alloy, and licensed practice come first.</p>
</main>
<script>${pageScript}</script>
</body>
</html>
`,
};

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

const escaped = (text: string): string => text.replaceAll(/[&<>"']/g, (letter) => escapes[letter]);

const folderLink = ({ name }: VariantRow): string => `${encodeURIComponent(name)}/`;

const head = (label: string): string =>
  `<th scope="col" aria-sort="none"><button type="button">${escaped(label)}</button></th>`;

const picture = (row: VariantRow): string =>
  row.picture
    ? `<img src="${folderLink(row)}${overviewPath}" alt="${escaped(row.name)}, seen from above" width="160" height="120" loading="lazy">`
    : '<span class="none">none</span>';

const textCell = (text: string): string => `<td data-sort="${escaped(text)}">${escaped(text)}</td>`;

/** Lengths sort by how long they are: 9in between 200 and 12in. */
function settingCell(text: string): string {
  const read = text === '' ? undefined : readQuantity(text, 'length');
  if (read === undefined || 'fault' in read) return textCell(text);
  return `<td data-sort="${read.value}">${escaped(text)}</td>`;
}

const numberCell = (value: number): string => `<td class="number" data-sort="${value}">${value}</td>`;

const figureCell = (figure: RowFigure | undefined, units: UnitSystem): string =>
  figure
    ? `<td class="number" data-sort="${figure.value}" title="${escaped(`${figureCatalogue[figure.name].label}: ${figure.subject}`)}">${escaped(showFigure(figure, units))}</td>`
    : '<td data-sort=""></td>';

function stateCell(row: VariantRow): string {
  const kind = row.built ? (row.stops > 0 ? 'stops' : 'fine') : 'missing';
  const counts = [
    counted(row.stops, 'stop'),
    counted(row.warnings, 'warning'),
    counted(row.notes, 'note'),
  ].join(', ');
  return `<td data-sort="${escaped(stateOf(row))}"><strong class="${kind}">${escaped(stateOf(row))}</strong><br>${counts}</td>`;
}

const counted = (count: number, what: string): string =>
  `<span class="number">${count} ${what}${count === 1 ? '' : 's'}</span>`;

/** Open on the page: how many; the sentences unfold. */
function openList(open: readonly OpenFinding[]): string {
  if (open.length === 0) return 'none';
  const items = open.map(
    ({ severity, code, subject, says }) =>
      `<li><b>${severity}</b> <code>${escaped(code)}</code> ${escaped(subject)}: ${escaped(says)}</li>`,
  );
  return `<details><summary>${open.length}</summary><ul>${items.join('')}</ul></details>`;
}
