import { columns } from '../../trials/index.ts';
import type { Paper } from './paper.ts';

/** Of the width, by column. */
const shares = [0.05, 0.08, 0.1, 0.1, 0.08, 0.07, 0.07, 0.2, 0.25];
const rowHeight = 9;

/** A blank record of pours, to be filled in by hand: one page of rows. */
export function pourRecord(paper: Paper, title: string): void {
  paper.page(title);
  paper.paragraph('One line for each pour. Change one thing at a time.', title);
  const rows = Math.floor((paper.bottom - paper.y - rowHeight) / rowHeight);
  const top = paper.y;
  columns.forEach(({ heading }, i) => {
    paper.write(heading, edge(paper, i) + 1, top + 1.5, { size: 2.5, bold: true });
  });
  for (let row = 0; row <= rows; row++) {
    const y = top + 6 + row * rowHeight;
    paper.rule(paper.left, y, paper.right, y, 0.15, 0.3);
    if (row < rows) paper.write(String(row + 1), paper.left + 1, y + 3, { size: 2.5, gray: 0.4 });
  }
  for (let i = 0; i <= columns.length; i++)
    paper.rule(edge(paper, i), top, edge(paper, i), top + 6 + rows * rowHeight, 0.15, 0.3);
}

const edge = (paper: Paper, column: number): number =>
  paper.left + paper.width * shares.slice(0, column).reduce((sum, share) => sum + share, 0);
