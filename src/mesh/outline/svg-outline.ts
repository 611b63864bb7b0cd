import { SaxesParser } from 'saxes';
import { SVGPathData, SVGPathDataTransformer } from 'svg-pathdata';
import type { Point2 } from '../../kernel/index.ts';
import type { DrawnPaths, Unreadable, UnreadableReason } from './drawn-paths.ts';
import { arcPoints, cubicPoints, ellipsePoints, quadraticPoints } from './flatten.ts';
import { compose2, type Matrix2, movePoint2, parseTransform, stretch } from './svg-transform.ts';

const mmPerPixel = 25.4 / 96;
/** SVG 2 / CSS absolute units in mm. */
const units: Readonly<Record<string, number>> = {
  '': mmPerPixel,
  px: mmPerPixel,
  in: 25.4,
  mm: 1,
  cm: 10,
  q: 0.25,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
};

const shapes = new Set(['path', 'rect', 'circle', 'ellipse', 'polygon', 'polyline', 'line']);
/** Drawn things that are not outlines: said when met. */
const drawn = new Set(['text', 'image', 'use', 'foreignObject', 'svg']);
/** What these hold is not drawn where it stands. */
const apart = new Set([
  'defs',
  'clipPath',
  'mask',
  'symbol',
  'pattern',
  'marker',
  'filter',
  'title',
  'desc',
  'metadata',
]);

type Attributes = Readonly<Record<string, string>>;

/** Reads the outlines of an SVG text: mm, y up, chords at most `chordError` mm from the curves. */
export function readSvg(text: string, chordError: number): DrawnPaths | Unreadable {
  const reading = new Reading(chordError);
  try {
    const parser = new SaxesParser();
    parser.on('error', (error) => {
      throw new SvgFault({ which: 'xml', fault: error.message.replace(/^undefined:/, '') });
    });
    parser.on('opentag', ({ name, attributes }) => reading.open(local(name), attributes));
    parser.on('closetag', () => reading.close());
    parser.write(text).close();
  } catch (error) {
    if (error instanceof SvgFault) return { reason: error.reason };
    throw error;
  }
  return reading.drawing ?? { reason: { which: 'no-svg' } };
}

/** Ends the reading; never leaves this file. */
class SvgFault extends Error {
  constructor(readonly reason: UnreadableReason) {
    super(reason.which);
  }
}

const local = (name: string): string => name.slice(name.indexOf(':') + 1);

class Reading {
  private readonly closed: Point2[][] = [];
  private readonly openPaths: Point2[][] = [];
  private readonly ignored = new Map<string, number>();
  private readonly matrices: Matrix2[] = [];
  /** How many of the elements being read are not drawn. */
  private hidden = 0;
  private assumed: DrawnPaths['assumed'];
  private rooted = false;

  constructor(private readonly chordError: number) {}

  get drawing(): DrawnPaths | undefined {
    if (!this.rooted) return undefined;
    const { closed, ignored, assumed } = this;
    return { closed, open: this.openPaths, ignored, ...(assumed === undefined ? {} : { assumed }) };
  }

  open(name: string, attributes: Attributes): void {
    if (this.matrices.length === 0) {
      if (name !== 'svg') throw new SvgFault({ which: 'root', element: name });
      this.rooted = true;
      this.matrices.push(this.pageMatrix(attributes));
      return;
    }
    const outer = this.matrices[this.matrices.length - 1];
    const text = attributes.transform ?? '';
    const transform = parseTransform(text);
    if (!transform) throw new SvgFault({ which: 'transform', text });
    const matrix = compose2(outer, transform);
    this.matrices.push(matrix);
    if (this.hidden > 0 || apart.has(name) || isHidden(attributes) || drawn.has(name)) {
      if (this.hidden === 0 && drawn.has(name)) this.ignored.set(name, (this.ignored.get(name) ?? 0) + 1);
      this.hidden++;
      return;
    }
    if (shapes.has(name)) this.add(name, attributes, matrix);
  }

  close(): void {
    this.matrices.pop();
    if (this.hidden > 0) this.hidden--;
  }

  /** From user units to mm with y up. A page without a size in real units counts 96 to the inch, as SVG says. */
  private pageMatrix({ width, height, viewBox, preserveAspectRatio }: Attributes): Matrix2 {
    const wide = parseLength(width);
    const high = parseLength(height);
    const box = (viewBox ?? '')
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    const boxed = box.length === 4 && box.every(Number.isFinite) && box[2] > 0 && box[3] > 0;
    if (!wide?.real && !high?.real) this.assumed = 'no-size';
    if (!boxed || (!wide && !high)) return [mmPerPixel, 0, 0, -mmPerPixel, 0, 0];
    let sx = wide ? wide.mm / box[2] : high ? high.mm / box[3] : mmPerPixel;
    let sy = high ? high.mm / box[3] : sx;
    if (!(preserveAspectRatio ?? '').trim().startsWith('none')) {
      sx = (preserveAspectRatio ?? '').includes('slice') ? Math.max(sx, sy) : Math.min(sx, sy);
      sy = sx;
    }
    return [sx, 0, 0, -sy, -box[0] * sx, box[1] * sy];
  }

  private add(name: string, attributes: Attributes, matrix: Matrix2): void {
    const scale = stretch(matrix);
    if (!(scale > 0)) return;
    const { closed, open } = shapePaths(name, attributes, this.chordError / scale);
    for (const path of closed) this.closed.push(path.map((point) => movePoint2(matrix, point)));
    for (const path of open) this.openPaths.push(path.map((point) => movePoint2(matrix, point)));
  }
}

const isHidden = ({ display, visibility, style }: Attributes): boolean =>
  display === 'none' ||
  visibility === 'hidden' ||
  /(^|;)\s*(display\s*:\s*none|visibility\s*:\s*hidden)/.test(style ?? '');

function parseLength(text: string | undefined): { readonly mm: number; readonly real: boolean } | undefined {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]*)\s*$/i.exec(text ?? '');
  const unit = match?.[2].toLowerCase() ?? '';
  const mm = Number(match?.[1]) * (units[unit] ?? Number.NaN);
  return mm > 0 && Number.isFinite(mm) ? { mm, real: unit !== '' && unit !== 'px' } : undefined;
}

interface Paths {
  readonly closed: Point2[][];
  readonly open: Point2[][];
}

/** Paths of one shape in its own user units. */
function shapePaths(name: string, attributes: Attributes, chordError: number): Paths {
  const number = (key: string): number => {
    const text = attributes[key];
    if (text === undefined) return 0;
    const value = Number(text.trim().replace(/px$/, ''));
    if (!Number.isFinite(value)) throw new SvgFault({ which: 'number', element: name, attribute: key, text });
    return value;
  };
  if (name === 'path') return pathPaths(attributes.d ?? '', chordError);
  if (name === 'circle' || name === 'ellipse') {
    const rx = name === 'circle' ? number('r') : number('rx');
    const ry = name === 'circle' ? rx : number('ry');
    if (!(rx > 0) || !(ry > 0)) return { closed: [], open: [] };
    const centre: Point2 = [number('cx'), number('cy')];
    return { closed: [ellipsePoints(centre, [rx, 0], [0, ry], chordError)], open: [] };
  }
  if (name === 'rect') {
    const size: Point2 = [number('width'), number('height')];
    if (!(size[0] > 0) || !(size[1] > 0)) return { closed: [], open: [] };
    const rx = attributes.rx === undefined ? number('ry') : number('rx');
    const ry = attributes.ry === undefined ? number('rx') : number('ry');
    return { closed: [rectangle([number('x'), number('y')], size, rx, ry, chordError)], open: [] };
  }
  if (name === 'line') {
    return {
      closed: [],
      open: [
        [
          [number('x1'), number('y1')],
          [number('x2'), number('y2')],
        ],
      ],
    };
  }
  const values = (attributes.points ?? '')
    .trim()
    .split(/[\s,]+/)
    .filter((text) => text !== '')
    .map(Number);
  if (!values.every(Number.isFinite)) throw new SvgFault({ which: 'points', element: name });
  const points = Array.from(
    { length: values.length >> 1 },
    (_, i): Point2 => [values[2 * i], values[2 * i + 1]],
  );
  return name === 'polygon' ? { closed: [points], open: [] } : { closed: [], open: [points] };
}

function rectangle([x, y]: Point2, [w, h]: Point2, rx: number, ry: number, chordError: number): Point2[] {
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

function pathPaths(d: string, chordError: number): Paths {
  const paths: Paths = { closed: [], open: [] };
  let commands: SVGPathData['commands'];
  try {
    commands = new SVGPathData(d)
      .toAbs()
      .normalizeHVZ(false)
      .normalizeST()
      .transform(SVGPathDataTransformer.ANNOTATE_ARCS()).commands;
  } catch (error) {
    throw new SvgFault({ which: 'path', fault: error instanceof Error ? error.message : String(error) });
  }
  let path: Point2[] = [];
  const end = (): void => {
    if (path.length > 1) paths.open.push(path);
    path = [];
  };
  for (const command of commands) {
    if (command.type === SVGPathData.MOVE_TO) {
      end();
      path = [[command.x, command.y]];
    } else if (command.type === SVGPathData.CLOSE_PATH) {
      const [start] = path;
      if (path.length > 1) paths.closed.push(path);
      // A path may go on after it is closed, from where it began.
      path = start ? [start] : [];
    } else {
      path.push(...stroke(command, path[path.length - 1], chordError));
    }
  }
  end();
  if (![...paths.closed, ...paths.open].flat(2).every(Number.isFinite))
    throw new SvgFault({ which: 'bounds' });
  return paths;
}

type Command = SVGPathData['commands'][number];

function stroke(command: Command, from: Point2, chordError: number): Point2[] {
  switch (command.type) {
    case SVGPathData.LINE_TO:
      return [[command.x, command.y]];
    case SVGPathData.QUAD_TO:
      return quadraticPoints(from, [command.x1, command.y1], [command.x, command.y], chordError);
    case SVGPathData.CURVE_TO:
      return cubicPoints(
        from,
        [command.x1, command.y1],
        [command.x2, command.y2],
        [command.x, command.y],
        chordError,
      );
    case SVGPathData.ARC: {
      const { cX, cY, phi1, phi2, rX, rY, xRot, x, y } = command;
      if (cX === undefined || cY === undefined || phi1 === undefined || phi2 === undefined) return [[x, y]];
      if (!(rX > 0) || !(rY > 0)) return [[x, y]];
      const [c, s] = [Math.cos((xRot * Math.PI) / 180), Math.sin((xRot * Math.PI) / 180)];
      const [from, to] = [(phi1 * Math.PI) / 180, (phi2 * Math.PI) / 180];
      const points = arcPoints([cX, cY], [rX * c, rX * s], [-rY * s, rY * c], from, to, chordError);
      return [...points.slice(1, -1), [x, y]];
    }
    default:
      throw new SvgFault({ which: 'command' });
  }
}
