import type { FigureName, Report } from '../findings/index.ts';
import { showFigure } from '../wording/index.ts';

/** What each figure is called in the answer, those of an order first. */
const ordered: readonly (readonly [FigureName, string])[] = [
  ['order.pours', ' pours'],
  ['order.time', ''],
  ['order.metal', ' of metal poured'],
  ['order.remelt', ' of it to melt again'],
];
const paced: readonly (readonly [FigureName, string])[] = [
  ['setting.open', ' until it may be opened'],
  ['pours.cycle', ' from pour to pour'],
];

/** Of an order, pours and time; without one, how fast pours may follow. Undefined where neither is known. */
export function poursAndTime({ figures, units }: Report): string | undefined {
  const said = (list: typeof ordered): string[] =>
    list.flatMap(([name, words]) => {
      const found = figures.find((one) => one.name === name);
      return found ? [`${showFigure(found, units)}${words}`] : [];
    });
  const all = [said(ordered), said(paced)].find((some) => some.length > 0);
  return all?.join(', ');
}
