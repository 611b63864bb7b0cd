/** A count and what follows it: `counted(1, 'hole was', 'holes were')` is `1 hole was`. */
export const counted = (count: number, one: string, many: string): string =>
  `${count} ${count === 1 ? one : many}`;
