/** A square grid of nodes seen from above: node (i, j) at (x0 + i cell, y0 + j cell), index j * nx + i. mm. */
export interface Grid {
  readonly cell: number;
  readonly x0: number;
  readonly y0: number;
  readonly nx: number;
  readonly ny: number;
}
