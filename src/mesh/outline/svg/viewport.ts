import { compose, type Matrix, scale, translate } from 'transformation-matrix';
import { lengthInMm, mmPerPixel, parseLength, parseNumbers } from './values.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** How a page lies in what is round it, and its size in its own user units where percentages have one. */
export interface Viewport {
  readonly matrix: Matrix;
  readonly size?: Size | undefined;
}

interface ViewBox extends Size {
  readonly x: number;
  readonly y: number;
}

type Attributes = Readonly<Record<string, string>>;

function viewBoxOf({ viewBox }: Attributes): ViewBox | undefined {
  const [x, y, width, height, ...more] = parseNumbers(viewBox ?? '') ?? [];
  return width > 0 && height > 0 && more.length === 0 ? { x, y, width, height } : undefined;
}

/** A page within a page, or a symbol that is used: set in a place of a given size (user units outside). */
export function innerViewport(attributes: Attributes, place: Size): Viewport {
  const box = viewBoxOf(attributes);
  return box
    ? { matrix: fitted(box, place, attributes.preserveAspectRatio ?? ''), size: box }
    : { matrix: scale(1), size: place };
}

/** A box of user units fitted into a place, whole and in the middle unless `preserveAspectRatio` says otherwise. */
function fitted(box: ViewBox, place: Size, preserveAspectRatio: string): Matrix {
  let [sx, sy] = [place.width / box.width, place.height / box.height];
  if (preserveAspectRatio.trim().startsWith('none')) return compose(scale(sx, sy), translate(-box.x, -box.y));
  sx = preserveAspectRatio.includes('slice') ? Math.max(sx, sy) : Math.min(sx, sy);
  sy = sx;
  const share = (axis: 'x' | 'Y'): number => {
    const word = new RegExp(`${axis}(Min|Max)`).exec(preserveAspectRatio)?.[1];
    return word === 'Min' ? 0 : word === 'Max' ? 1 : 0.5;
  };
  const [left, down] = [place.width - box.width * sx, place.height - box.height * sy];
  return compose(translate(left * share('x'), down * share('Y')), scale(sx, sy), translate(-box.x, -box.y));
}

/** The whole drawing: from user units to mm with y up. */
export interface Page extends Viewport {
  /** No size in mm or inches is given: 96 user units count as an inch, as SVG says. */
  readonly assumed: boolean;
}

export function pageOf(attributes: Attributes): Page {
  const [wide, high] = [sideOf(attributes.width), sideOf(attributes.height)];
  const assumed = !wide?.real && !high?.real;
  const box = viewBoxOf(attributes);
  const place = box ? placeOf(box, wide?.mm, high?.mm) : undefined;
  if (box && place) {
    const matrix = fitted(box, place, attributes.preserveAspectRatio ?? '');
    return { matrix: compose(scale(1, -1), matrix), size: box, assumed };
  }
  const size = wide && high ? { width: wide.mm / mmPerPixel, height: high.mm / mmPerPixel } : undefined;
  return { matrix: scale(mmPerPixel, -mmPerPixel), size: box ?? size, assumed };
}

/** A side of the page in mm, and whether it is given in a unit that is the same on every screen. */
function sideOf(text: string | undefined): { readonly mm: number; readonly real: boolean } | undefined {
  const length = parseLength(text ?? '');
  const mm = length && lengthInMm(length);
  if (!length || mm === undefined || !(mm > 0)) return undefined;
  return { mm, real: length.unit !== '' && length.unit !== 'px' };
}

/** Where only one side is given, the other follows from the box. */
function placeOf(box: ViewBox, width: number | undefined, height: number | undefined): Size | undefined {
  if (width !== undefined) return { width, height: height ?? (width * box.height) / box.width };
  if (height !== undefined) return { width: (height * box.width) / box.height, height };
  return undefined;
}
