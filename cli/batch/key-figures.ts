import { type Figure, type FigureName, figureCatalogue, type Report } from '../../src/findings/index.ts';

/** Of a figure that many things have, the one a batch compares variants by; `only`: the whole mold has one. */
interface KeyFigure {
  readonly name: FigureName;
  readonly pick: 'least' | 'most' | 'only';
}

export const keyFigures: readonly KeyFigure[] = [
  { name: 'cover.least', pick: 'least' },
  { name: 'walls.least', pick: 'least' },
  { name: 'walls.rim', pick: 'least' },
  { name: 'registration.falseSeat', pick: 'only' },
  { name: 'registration.mismatch', pick: 'most' },
  { name: 'balance.static', pick: 'only' },
  { name: 'shot.poured', pick: 'only' },
  { name: 'pressure.outer', pick: 'most' },
  { name: 'closing.force', pick: 'only' },
  { name: 'closing.clamps', pick: 'only' },
  { name: 'cure.needed', pick: 'only' },
  { name: 'spin.rimSpeed', pick: 'only' },
];

/** Such as `least cover of all`; a figure of many things says which of them is meant. */
export const keyLabel = ({ name, pick }: KeyFigure): string => {
  const { label } = figureCatalogue[name];
  return pick === 'only' || label.startsWith('least') ? label : `${label}, ${pick}`;
};

/** The key figures a report has, in their order. */
export function keyFiguresOf({ figures }: Report): Figure[] {
  return keyFigures.flatMap(({ name, pick }) => {
    const sorted = figures.filter((one) => one.name === name).sort((a, b) => a.value - b.value);
    const found = pick === 'least' ? sorted[0] : sorted.at(-1);
    return found ? [found] : [];
  });
}
