/** Plain paper by day, slate by night; no file from anywhere else. */
export const pageStyle = `
:root { color-scheme: light dark; --ground: #fbfaf7; --ink: #22201c; --line: #b9b3a6; --head: #ece8de; --stop: #9c1c1c; --fine: #1d5c37; --focus: #1f4f99; }
@media (prefers-color-scheme: dark) {
  :root { --ground: #1b1d20; --ink: #e8e6e1; --line: #55585e; --head: #2a2d32; --stop: #ff9d94; --fine: #93d8ac; --focus: #9cc3ff; }
}
body { margin: 1.5rem; background: var(--ground); color: var(--ink); font: 15px/1.45 system-ui, sans-serif; }
h1 { font-size: 1.4rem; }
.sheet { overflow: auto; max-height: 80vh; border: 1px solid var(--line); }
table { border-collapse: collapse; }
th, td { padding: 0.4rem 0.6rem; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top; }
thead th { position: sticky; top: 0; z-index: 1; background: var(--head); vertical-align: bottom; }
tbody th, thead th:nth-child(2) { position: sticky; left: 0; background: var(--ground); }
thead th:nth-child(2) { z-index: 2; background: var(--head); }
thead button { all: unset; cursor: pointer; min-width: 5rem; font-weight: 600; text-decoration: underline; text-decoration-style: dotted; }
th[aria-sort=ascending] button::after { content: ' (up)'; }
th[aria-sort=descending] button::after { content: ' (down)'; }
:focus-visible, thead button:focus-visible { outline: 3px solid var(--focus); outline-offset: 2px; }
a { color: inherit; }
.number { white-space: nowrap; font-variant-numeric: tabular-nums; }
.stops, .missing { color: var(--stop); }
.fine { color: var(--fine); }
details { min-width: 9rem; max-width: 32rem; }
ul { margin: 0.3rem 0; padding-left: 1.1rem; }
img { display: block; }
@page { size: landscape; margin: 10mm; }
@media print {
  :root { color-scheme: light; --ground: #fff; --ink: #000; --line: #888; --head: #eee; --stop: #9c1c1c; --fine: #1d5c37; }
  body { margin: 0; font-size: 6.5pt; line-height: 1.25; }
  .sheet { overflow: visible; max-height: none; border: 0; }
  table { width: 100%; }
  th, td { padding: 0.15rem; overflow-wrap: anywhere; }
  thead { display: table-header-group; }
  thead th, tbody th, thead th:nth-child(2) { position: static; }
  thead button { min-width: 0; text-decoration: none; }
  tr { break-inside: avoid; }
  details { min-width: 0; }
  .number { white-space: normal; }
  img { width: 18mm; height: auto; }
}
`;

/** Sorts the rows by a column: by number where both cells begin with one, else by text; empty cells stay last. */
export const pageScript = `
const table = document.querySelector('table');
const body = table.tBodies[0];
const heads = [...table.tHead.rows[0].cells];
const order = new Intl.Collator('en', { numeric: true });
const keyOf = (row, column) => row.cells[column].dataset.sort ?? '';
function compare(a, b) {
  const [x, y] = [Number.parseFloat(a), Number.parseFloat(b)];
  const numbers = Number.isFinite(x) && Number.isFinite(y);
  return (numbers ? x - y : 0) || order.compare(a, b);
}
heads.forEach((head, column) => {
  head.querySelector('button')?.addEventListener('click', () => {
    const down = head.getAttribute('aria-sort') === 'ascending';
    for (const other of heads) if (other.hasAttribute('aria-sort')) other.setAttribute('aria-sort', 'none');
    head.setAttribute('aria-sort', down ? 'descending' : 'ascending');
    const rows = [...body.rows].sort((one, two) => {
      const [a, b] = [keyOf(one, column), keyOf(two, column)];
      if (a === '' || b === '') return (a === '') - (b === '');
      return down ? compare(b, a) : compare(a, b);
    });
    body.append(...rows);
  });
});
`;
