import type { WhatToMake } from '../src/export/index.ts';
import { shorten, strong, table, wrap } from './terminal.ts';

/** The list of what to make, cut and take, as tables no wider than `width` columns. */
export function showWhatToMake({ listings, remarks }: WhatToMake, width: number): string {
  const tables = listings.map(({ title, columns, rows }) => {
    const right = columns.flatMap(({ align }, i) => (align === 'right' ? [i] : []));
    return `${strong(title)}\n${table(fitted([columns.map((column) => column.title), ...rows], width), right)}`;
  });
  return [...tables, ...remarks.map((remark) => wrap(remark, width, '', '  '))].join('\n\n');
}

/** Cuts the cells of the widest columns until the lines fit. */
function fitted(rows: readonly (readonly string[])[], most: number): string[][] {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  const gaps = 2 * (widths.length - 1);
  while (widths.reduce((sum, width) => sum + width, gaps) > most)
    widths[widths.indexOf(Math.max(...widths))]--;
  return rows.map((row) => row.map((cell, column) => shorten(cell, widths[column])));
}
