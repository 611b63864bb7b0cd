import { line, type Outline, type Path, type Point2, placed } from '../../geometry/index.ts';
import { type Lettering, lettersOf } from '../../lettering/index.ts';
import { type Drawing, type Layer, sizeOf } from '../../mold/index.ts';

export const layers: readonly Layer[] = ['cut', 'engrave', 'score'];

/** A drawing on its sheet, mm, y up, all of it between (0, 0) and (width, height); texts are strokes. */
export interface FlatSheet {
  readonly width: number;
  readonly height: number;
  readonly layers: Readonly<Record<Layer, Outline>>;
}

const margin = 10;
/** The bar that shows whether a print is at true size, mm. */
const checkBar = 100;
const tick = 3;
const letters = 3;

/** Puts a drawing on a sheet with a margin, and under it, to be engraved in the scrap, its title and the check bar. */
export function flatSheet(drawing: Drawing): FlatSheet {
  const { min, max } = sizeOf(drawing);
  const foot = margin + 2 * tick + 3 * letters;
  const [dx, dy] = [margin - min[0], foot + margin - min[1]];
  const pathsOn = (layer: Layer): Path[] =>
    drawing.marks
      .filter((marks) => marks.layer === layer)
      .flatMap(({ outline, texts }) => [...outline, ...texts.flatMap(lettersOf)])
      .map((path) => placed(path, 0, [dx, dy]));
  return {
    width: Math.max(max[0] - min[0], checkBar) + 2 * margin,
    height: max[1] + dy + margin,
    layers: {
      cut: pathsOn('cut'),
      engrave: [...pathsOn('engrave'), ...footOf(drawing)],
      score: pathsOn('score'),
    },
  };
}

function footOf({ title, thickness }: Drawing): Path[] {
  const [left, right, y] = [margin, margin + checkBar, margin + tick];
  const end = (x: number): Path => line([x, y - tick], [x, y + tick]);
  const text = (words: string, at: Point2): Path[] => {
    const lettering: Lettering = { words, at, height: letters, turnRad: 0, anchor: 'start' };
    return lettersOf(lettering);
  };
  const sheet = thickness === undefined ? '' : `, ${Number(thickness.toFixed(2))} mm thick`;
  return [
    line([left, y], [right, y]),
    end(left),
    end(right),
    ...text('100 mm', [left + tick, y + 1.5]),
    ...text(`${title}${sheet}`, [left, y + tick + letters]),
  ];
}

/** A length in mm for a file: to 0.1 micrometer, without a sign on nought. */
export const decimal = (value: number): string => String(Number(value.toFixed(4)) + 0);
