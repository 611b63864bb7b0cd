import type { Element } from 'domhandler';
import { getElementsByTagName } from 'domutils';
import { applyToPoint, compose, type Matrix, translate } from 'transformation-matrix';
import type { Point2 } from '../../../geometry/index.ts';
import type { DrawnPaths, Unreadable } from '../drawn-paths.ts';
import { limitPoints } from '../point-limit.ts';
import { readDocument } from './document.ts';
import { Lengths, type Property, shapes } from './shapes.ts';
import { Styles } from './styles.ts';
import { SvgFault } from './svg-fault.ts';
import { parseTransform } from './values.ts';
import { innerViewport, pageOf, type Size } from './viewport.ts';

/** Drawn things that are not outlines: said when met. */
const unread = new Set(['text', 'image', 'foreignObject']);
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
/** More shapes used again are a flood, not a drawing. */
const mostUses = 4_000;

/** Reads the outlines of an SVG text: mm, y up, chords at most `chordError` mm from the curves. Throws TooManyPoints. */
export function readSvg(text: string, chordError: number): DrawnPaths | Unreadable {
  try {
    return new Reading(text, chordError).drawing();
  } catch (error) {
    if (error instanceof SvgFault) return { reason: error.reason };
    throw error;
  }
}

/** What an element takes over from those it stands in. */
interface Surroundings {
  readonly matrix: Matrix;
  /** Of the page, in its user units. */
  readonly size: Size | undefined;
  readonly visible: boolean;
  readonly filled: boolean;
  readonly stroked: boolean;
  /** What is being used: a thing that holds itself has no end. */
  readonly uses: readonly Element[];
}

class Reading {
  private readonly closed: Point2[][] = [];
  private readonly open: Point2[][] = [];
  private readonly ignored: Map<string, number>;
  private readonly root: Element;
  private readonly styles: Styles;
  private readonly byId = new Map<string, Element>();
  private used = 0;
  private points = 0;

  constructor(
    text: string,
    private readonly chordError: number,
  ) {
    const { document, root } = readDocument(text);
    this.root = root;
    this.styles = new Styles(document);
    this.ignored = new Map(this.styles.ignored);
    for (const element of getElementsByTagName('*', root)) {
      const { id } = element.attribs;
      if (id !== undefined && !this.byId.has(id)) this.byId.set(id, element);
    }
  }

  drawing(): DrawnPaths {
    const { closed, open, ignored, root } = this;
    const { matrix, size, assumed } = pageOf(root.attribs);
    const page = { matrix, size, visible: true, filled: true, stroked: false, uses: [] };
    const property = this.styles.of(root);
    if (property('display') !== 'none') this.inside(root, within(page, property));
    return { closed, open, ignored, ...(assumed ? { assumed: 'no-size' } : {}) };
  }

  private inside(element: Element, around: Surroundings): void {
    for (const child of element.children) if ('attribs' in child) this.element(child, around);
  }

  private element(element: Element, outer: Surroundings): void {
    const { name } = element;
    if (apart.has(name)) return;
    const property = this.styles.of(element);
    if (property('display') === 'none') return;
    const around = within(outer, property);
    if (name in shapes) this.shape(element, property, around);
    else if (name === 'svg') this.page(element, element, property, around);
    else if (name === 'use') this.use(element, property, around);
    else if (!unread.has(name)) this.inside(element, around);
    else if (around.visible) this.ignore(name);
  }

  private shape({ name, attribs }: Element, property: Property, around: Surroundings): void {
    const { matrix, size, visible, filled, stroked } = around;
    const scale = stretch(matrix);
    if (!visible || !(scale > 0)) return;
    if (!filled && !stroked) {
      this.ignore(`${name} without fill and stroke`);
      return;
    }
    const paths = shapes[name](new Lengths(name, property, size), attribs, this.chordError / scale);
    for (const path of [...paths.closed, ...paths.open]) this.points += path.length;
    limitPoints(this.points);
    const moved = (path: readonly Point2[]): Point2[] =>
      path.map(([x, y]) => applyToPoint(matrix, [x, y] as [number, number]));
    for (const path of paths.closed) this.closed.push(moved(path));
    for (const path of paths.open) this.open.push(moved(path));
  }

  /** What a page or symbol holds, as wide and high as the element that places it says, else all of what is round it. */
  private page(page: Element, placed: Element, property: Property, around: Surroundings): void {
    const lengths = new Lengths(placed.name, property, around.size);
    const width = lengths.given('width') ?? around.size?.width;
    const height = lengths.given('height') ?? around.size?.height;
    if (width === undefined || height === undefined) throw new SvgFault({ which: 'no-page' });
    if (!(width > 0) || !(height > 0)) return;
    const corner = page === placed ? translate(lengths.of('x'), lengths.of('y')) : translate(0, 0);
    const { matrix, size } = innerViewport(page.attribs, { width, height });
    this.inside(page, { ...around, size, matrix: compose(around.matrix, corner, matrix) });
  }

  private use(element: Element, property: Property, outer: Surroundings): void {
    const reference = element.attribs.href ?? element.attribs['xlink:href'] ?? '';
    const target = reference.startsWith('#') ? this.byId.get(reference.slice(1)) : undefined;
    if (!target || outer.uses.includes(target)) {
      this.ignore('use');
      return;
    }
    if (++this.used > mostUses) throw new SvgFault({ which: 'uses', limit: mostUses });
    const lengths = new Lengths('use', property, outer.size);
    const corner = translate(lengths.of('x'), lengths.of('y'));
    const around = { ...outer, matrix: compose(outer.matrix, corner), uses: [...outer.uses, target] };
    if (target.name === 'symbol')
      this.page(target, element, property, within(around, this.styles.of(target)));
    else this.element(target, around);
  }

  private ignore(kind: string): void {
    this.ignored.set(kind, (this.ignored.get(kind) ?? 0) + 1);
  }
}

function within(outer: Surroundings, property: Property): Surroundings {
  const text = property('transform') ?? '';
  const transform = parseTransform(text);
  if (!transform) throw new SvgFault({ which: 'transform', text });
  if (text !== '' && property('transform-origin') !== undefined) throw new SvgFault({ which: 'origin' });
  const inherited = (name: string): string | undefined => {
    const value = property(name);
    return value === 'inherit' || value === 'unset' ? undefined : value;
  };
  const [visibility, fill, stroke] = ['visibility', 'fill', 'stroke'].map(inherited);
  return {
    ...outer,
    matrix: compose(outer.matrix, transform),
    visible: visibility === undefined ? outer.visible : visibility === 'visible',
    filled: fill === undefined ? outer.filled : isPaint(fill),
    stroked: stroke === undefined ? outer.stroked : isPaint(stroke),
  };
}

const isPaint = (value: string): boolean => value !== 'none' && value !== 'transparent';

/** The most any direction is stretched: the greater singular value. */
function stretch({ a, b, c, d }: Matrix): number {
  const [p, q] = [a * a + b * b + c * c + d * d, 2 * Math.abs(a * d - b * c)];
  return (Math.sqrt(Math.max(0, p + q)) + Math.sqrt(Math.max(0, p - q))) / 2;
}
