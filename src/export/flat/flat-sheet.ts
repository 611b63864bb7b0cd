import { line, mmPerInch, type Outline, type Path, type Point2, placed } from '../../geometry/index.ts';
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
/** The bars that show whether a print is at true size, mm: one for each ruler at the bench. */
const checkBars = [
  { length: 100, says: '100 mm' },
  { length: 4 * mmPerInch, says: '4 in' },
] as const;
const longestBar = Math.max(...checkBars.map(({ length }) => length));
const tick = 3;
const letters = 3;

/** Puts a drawing on a sheet with a margin, and under it, to be engraved in the scrap, its title and the check bars. */
export function flatSheet(drawing: Drawing): FlatSheet {
  const { min, max } = sizeOf(drawing);
  const foot = margin + 4 * tick + 4 * letters;
  const [dx, dy] = [margin - min[0], foot + margin - min[1]];
  const pathsOn = (layer: Layer): Path[] =>
    drawing.marks
      .filter((marks) => marks.layer === layer)
      .flatMap(({ outline, texts }) => [...outline, ...texts.flatMap(lettersOf)])
      .map((path) => placed(path, 0, [dx, dy]));
  return {
    width: Math.max(max[0] - min[0], longestBar) + 2 * margin,
    height: max[1] + dy + margin,
    layers: {
      cut: pathsOn('cut'),
      engrave: [...pathsOn('engrave'), ...footOf(drawing)],
      score: pathsOn('score'),
    },
  };
}

/** Height of one check bar with its words, mm. */
const barStep = 2 * tick + letters;

function footOf(drawing: Drawing): Path[] {
  const text = (words: string, at: Point2): Path[] => {
    const lettering: Lettering = { words, at, height: letters, turnRad: 0, anchor: 'start' };
    return lettersOf(lettering);
  };
  const bars = checkBars.flatMap(({ length, says }, i) => {
    const [right, y] = [margin + length, margin + tick + i * barStep];
    const end = (x: number): Path => line([x, y - tick], [x, y + tick]);
    return [line([margin, y], [right, y]), end(margin), end(right), ...text(says, [margin + tick, y + 1.5])];
  });
  return [...bars, ...text(sheetTitle(drawing), [margin, margin + 2 * barStep])];
}

/** Title and thickness of the sheet it is cut from. */
function sheetTitle({ title, thickness }: Drawing): string {
  if (thickness === undefined) return title;
  const [mm, inch] = [thickness.toFixed(2), (thickness / mmPerInch).toFixed(3)].map(Number);
  return `${title}, ${mm} mm (${inch} in) thick`;
}

/** A length in mm for a file: to 0.1 micrometer, without a sign on nought. */
export const decimal = (value: number): string => String(Number(value.toFixed(4)) + 0);
