import type { Point2 } from '../../../geometry/index.ts';
import { arcPoints, ellipsePoints } from '../flatten.ts';
import { type Paths, pathPaths } from './path-data.ts';
import { SvgFault } from './svg-fault.ts';
import { lengthInPixels, parseLength, parseNumbers } from './values.ts';
import type { Size } from './viewport.ts';

/** A property of an element, from its styles or its attribute of that name. */
export type Property = (name: string) => string | undefined;

type Shape = (lengths: Lengths, attributes: Readonly<Record<string, string>>, chordError: number) => Paths;

const nothing: Paths = { closed: [], open: [] };

/** Paths of each shape in its own user units. */
export const shapes: Readonly<Record<string, Shape>> = {
  path: (_, { d }, chordError) => pathPaths(d ?? '', chordError),
  circle: (lengths, _, chordError) => {
    const r = lengths.of('r');
    return ellipse(lengths, r, r, chordError);
  },
  ellipse: (lengths, _, chordError) => {
    const [rx, ry] = lengths.radii();
    return ellipse(lengths, rx, ry, chordError);
  },
  rect: (lengths, _, chordError) => {
    const size: Point2 = [lengths.of('width'), lengths.of('height')];
    if (!(size[0] > 0) || !(size[1] > 0)) return nothing;
    const corner: Point2 = [lengths.of('x'), lengths.of('y')];
    return { closed: [rectangle(corner, size, lengths.radii(), chordError)], open: [] };
  },
  line: (lengths) => {
    const end = (i: 1 | 2): Point2 => [lengths.of(`x${i}`), lengths.of(`y${i}`)];
    return { closed: [], open: [[end(1), end(2)]] };
  },
  polygon: (_, { points }) => ({ closed: [pointsOf(points, 'polygon')], open: [] }),
  polyline: (_, { points }) => ({ closed: [], open: [pointsOf(points, 'polyline')] }),
};

/** What a percentage is of (SVG 2, 8.9). */
const along: Readonly<Record<string, (size: Size) => number>> = {
  ...Object.fromEntries(['x', 'x1', 'x2', 'cx', 'rx', 'width'].map((key) => [key, ({ width }) => width])),
  ...Object.fromEntries(['y', 'y1', 'y2', 'cy', 'ry', 'height'].map((key) => [key, ({ height }) => height])),
  r: ({ width, height }) => Math.hypot(width, height) / Math.SQRT2,
};

/** Lengths of one element in user units. */
export class Lengths {
  constructor(
    private readonly name: string,
    private readonly property: Property,
    private readonly size: Size | undefined,
  ) {}

  /** 0 unless it is given. */
  of(key: string): number {
    return this.given(key) ?? 0;
  }

  /** Undefined where it is left to the drawing program. */
  given(key: string): number | undefined {
    const text = this.property(key);
    if (text === undefined || text.trim() === 'auto') return undefined;
    const length = parseLength(text);
    const of = this.size && along[key]?.(this.size);
    if (length?.unit === '%' && of !== undefined) return (length.value * of) / 100;
    const pixels = length && lengthInPixels(length);
    if (pixels !== undefined) return pixels;
    const which = length?.unit === '%' ? 'share-of-none' : 'length';
    throw new SvgFault({ which, element: this.name, attribute: key, text });
  }

  /** Of round corners or an ellipse: one that is not given is the other. */
  radii(): Point2 {
    const [rx, ry] = [this.given('rx'), this.given('ry')];
    return [rx ?? ry ?? 0, ry ?? rx ?? 0];
  }
}

function ellipse(lengths: Lengths, rx: number, ry: number, chordError: number): Paths {
  if (!(rx > 0) || !(ry > 0)) return nothing;
  const center: Point2 = [lengths.of('cx'), lengths.of('cy')];
  return { closed: [ellipsePoints(center, [rx, 0], [0, ry], chordError)], open: [] };
}

function pointsOf(text: string | undefined, name: string): Point2[] {
  const values = parseNumbers(text ?? '');
  if (!values) throw new SvgFault({ which: 'points', element: name });
  return Array.from({ length: values.length >> 1 }, (_, i) => [values[2 * i], values[2 * i + 1]] as const);
}

function rectangle([x, y]: Point2, [w, h]: Point2, [rx, ry]: Point2, chordError: number): Point2[] {
  const [a, b] = [Math.min(rx, w / 2), Math.min(ry, h / 2)];
  if (!(a > 0) || !(b > 0)) {
    return [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ];
  }
  const corner = (cx: number, cy: number, quarter: number): Point2[] =>
    arcPoints([cx, cy], [a, 0], [0, b], (quarter * Math.PI) / 2, ((quarter + 1) * Math.PI) / 2, chordError);
  return [
    ...corner(x + w - a, y + h - b, 0),
    ...corner(x + a, y + h - b, 1),
    ...corner(x + a, y + b, 2),
    ...corner(x + w - a, y + b, 3),
  ];
}
