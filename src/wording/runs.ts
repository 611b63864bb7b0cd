/** Names in their order, those that differ by a number that counts up as one: `leaf-1 to 3, 5, shell`. */
export function runs(names: readonly string[]): string {
  const found: { first: string; stem: string; from: number; to: number }[] = [];
  for (const name of names) {
    const [, stem, digits] = name.match(/^(.*-)(\d+)$/) ?? ['', name, 'none'];
    const number = Number(digits);
    const last = found.at(-1);
    if (last && last.stem === stem && number === last.to + 1) last.to = number;
    else found.push({ first: name, stem, from: number, to: number });
  }
  return found
    .map(({ first, stem, from, to }, i) => {
      // After a copy of the same thing its number tells enough.
      const start = found[i - 1]?.stem === stem && !Number.isNaN(from) ? String(from) : first;
      return to > from ? `${start} to ${to}` : start;
    })
    .join(', ');
}
