import { mmPerInch, type Point2, toRadians } from '../../geometry/index.ts';
import type { DrawnPaths, Unreadable } from './drawn-paths.ts';
import { arcPoints, bulgePoints, ellipsePoints } from './flatten.ts';
import { limitPoints } from './point-limit.ts';

/** $INSUNITS of the DXF reference, in mm. */
const unitsMm: Readonly<Record<number, number>> = { 1: mmPerInch, 2: 304.8, 4: 1, 5: 10, 6: 1000, 13: 0.001 };

interface Pair {
  readonly code: number;
  readonly value: string;
}

/** An entity: its type, and its pairs until the next one. */
interface Entity {
  readonly type: string;
  readonly pairs: Pair[];
}

/**
 * Reads the outlines of an ASCII DXF text: LINE, ARC, CIRCLE, ELLIPSE, LWPOLYLINE and POLYLINE (with bulges) of the
 * model space; mm. A file that does not end in EOF is cut off and not read. Throws TooManyPoints.
 */
export function readDxf(text: string, chordError: number): DrawnPaths | Unreadable {
  const pairs = readPairs(text);
  if ('reason' in pairs) return pairs;
  const last = pairs[pairs.length - 1];
  if (last?.code !== 0 || last.value !== 'EOF') {
    return { reason: { which: 'cut-off' } };
  }
  const entities = entitiesOf(pairs);
  if (!entities) return { reason: { which: 'no-entities' } };
  const unit = unitOf(pairs);
  const scale = unit ?? 1;
  const drawing = new Sheet(chordError / scale);
  for (let i = 0; i < entities.length; i++) {
    const entity = entities[i];
    const vertices: Entity[] = [];
    if (entity.type === 'POLYLINE') {
      while (entities[i + 1]?.type === 'VERTEX') vertices.push(entities[++i]);
    }
    if (entity.type !== 'SEQEND' && entity.type !== 'VIEWPORT' && first(entity, 67) !== 1) {
      drawing.add(entity, vertices);
    }
  }
  const grow = (paths: readonly Point2[][]): Point2[][] =>
    paths.map((path) => path.map(([x, y]) => [x * scale, y * scale] as const));
  return {
    closed: grow(drawing.closed),
    open: grow(drawing.open),
    ignored: drawing.ignored,
    ...(unit === undefined ? { assumed: 'no-unit' } : {}),
  };
}

function readPairs(text: string): Pair[] | Unreadable {
  if (text.startsWith('AutoCAD Binary DXF')) return { reason: { which: 'binary-dxf' } };
  const lines = text.split(/\r\n|\r|\n/);
  while (lines.length > 0 && lines[lines.length - 1].trim() === '') lines.pop();
  const pairs: Pair[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i].trim() === '' ? Number.NaN : lines[i]);
    if (!Number.isInteger(code))
      return { reason: { which: 'group-code', line: i + 1, text: lines[i].slice(0, 40) } };
    pairs.push({ code, value: lines[i + 1].trim() });
  }
  return pairs;
}

function entitiesOf(pairs: readonly Pair[]): Entity[] | undefined {
  const start = pairs.findIndex(
    ({ code, value }, i) => code === 2 && value === 'ENTITIES' && i > 0 && pairs[i - 1].value === 'SECTION',
  );
  if (start < 0) return undefined;
  const entities: Entity[] = [];
  for (const pair of pairs.slice(start + 1)) {
    if (pair.code === 0) {
      if (pair.value === 'ENDSEC' || pair.value === 'EOF') break;
      entities.push({ type: pair.value, pairs: [] });
    } else entities[entities.length - 1]?.pairs.push(pair);
  }
  return entities;
}

function unitOf(pairs: readonly Pair[]): number | undefined {
  const at = pairs.findIndex(({ code, value }) => code === 9 && value === '$INSUNITS');
  return at < 0 ? undefined : unitsMm[Number(pairs[at + 1]?.value)];
}

const first = (entity: Entity, code: number): number | undefined => {
  const found = entity.pairs.find((pair) => pair.code === code);
  return found ? Number(found.value) : undefined;
};

class Sheet {
  readonly closed: Point2[][] = [];
  readonly open: Point2[][] = [];
  readonly ignored = new Map<string, number>();
  private points = 0;

  constructor(private readonly chordError: number) {}

  /** One entity in the file's unit. What is not understood, or holds no finite numbers, is counted as ignored. */
  add(entity: Entity, vertices: readonly Entity[]): void {
    const path = this.pathOf(entity, vertices);
    this.points += path?.points.length ?? 0;
    limitPoints(this.points);
    if (!path?.points.flat().every(Number.isFinite)) {
      this.ignored.set(entity.type, (this.ignored.get(entity.type) ?? 0) + 1);
    } else if (path.points.length > 1) (path.closed ? this.closed : this.open).push(path.points);
  }

  private pathOf(entity: Entity, vertices: readonly Entity[]): Path | undefined {
    // Flat entities may be drawn on a plane seen from below: then their x runs the other way.
    const away = first(entity, 230) ?? 1;
    if (Math.abs(first(entity, 210) ?? 0) > 1e-9 || Math.abs(first(entity, 220) ?? 0) > 1e-9)
      return undefined;
    const seen = (path: Path): Path =>
      away < 0 ? { ...path, points: path.points.map(([x, y]) => [-x, y] as const) } : path;
    switch (entity.type) {
      case 'LINE':
        return { closed: false, points: [this.point(entity, 10), this.point(entity, 11)] };
      case 'CIRCLE':
      case 'ARC':
        return this.round(entity, seen);
      case 'ELLIPSE':
        return this.ellipse(entity, away);
      case 'LWPOLYLINE':
        return seen(this.bulged(lightVertices(entity), ((first(entity, 70) ?? 0) & 1) === 1));
      case 'POLYLINE': {
        const flags = first(entity, 70) ?? 0;
        // 8: in space, 16 and 64: meshes. 2 and 4: fitted curves, whose extra points come as vertices too.
        if ((flags & (8 | 16 | 64)) !== 0) return undefined;
        const corners = vertices.filter((vertex) => ((first(vertex, 70) ?? 0) & 16) === 0);
        const points = corners.map((vertex) => ({
          at: this.point(vertex, 10),
          bulge: first(vertex, 42) ?? 0,
        }));
        return seen(this.bulged(points, (flags & 1) === 1));
      }
      default:
        return undefined;
    }
  }

  private point(entity: Entity, code: number): Point2 {
    return [first(entity, code) ?? Number.NaN, first(entity, code + 10) ?? Number.NaN];
  }

  private round(entity: Entity, seen: (path: Path) => Path): Path | undefined {
    const radius = first(entity, 40) ?? Number.NaN;
    const centre = this.point(entity, 10);
    if (!(radius > 0) || !Number.isFinite(radius)) return undefined;
    const [u, v] = [[radius, 0] as const, [0, radius] as const];
    if (entity.type === 'CIRCLE') {
      return seen({ closed: true, points: ellipsePoints(centre, u, v, this.chordError) });
    }
    const from = toRadians(first(entity, 50) ?? Number.NaN);
    const to = from + sweep(from, toRadians(first(entity, 51) ?? Number.NaN));
    if (!Number.isFinite(to)) return undefined;
    return seen({ closed: false, points: arcPoints(centre, u, v, from, to, this.chordError) });
  }

  private ellipse(entity: Entity, away: number): Path | undefined {
    const centre = this.point(entity, 10);
    const u = this.point(entity, 11);
    const ratio = (first(entity, 40) ?? Number.NaN) * Math.sign(away);
    const v: Point2 = [-u[1] * ratio, u[0] * ratio];
    const from = first(entity, 41) ?? 0;
    const to = from + sweep(from, first(entity, 42) ?? 2 * Math.PI);
    if (![...centre, ...u, ...v, from, to].every(Number.isFinite)) return undefined;
    if (to - from > 2 * Math.PI - 1e-9)
      return { closed: true, points: ellipsePoints(centre, u, v, this.chordError) };
    return { closed: false, points: arcPoints(centre, u, v, from, to, this.chordError) };
  }

  private bulged(corners: readonly Corner[], closed: boolean): Path {
    const points: Point2[] = corners.length > 0 ? [corners[0].at] : [];
    const sides = closed ? corners.length : corners.length - 1;
    for (let i = 0; i < sides; i++) {
      points.push(
        ...bulgePoints(
          corners[i].at,
          corners[(i + 1) % corners.length].at,
          corners[i].bulge,
          this.chordError,
        ),
      );
      limitPoints(points.length);
    }
    if (closed) points.pop();
    return { closed, points };
  }
}

/** Arcs run counter-clockwise from start to end; equal angles mean the whole round. rad. */
function sweep(from: number, to: number): number {
  const turn = (to - from) % (2 * Math.PI);
  return turn > 1e-9 ? turn : turn + 2 * Math.PI;
}

interface Path {
  readonly closed: boolean;
  readonly points: Point2[];
}

interface Corner {
  readonly at: Point2;
  readonly bulge: number;
}

function lightVertices(entity: Entity): Corner[] {
  const corners: { at: [number, number]; bulge: number }[] = [];
  for (const { code, value } of entity.pairs) {
    if (code === 10) corners.push({ at: [Number(value), Number.NaN], bulge: 0 });
    const corner = corners[corners.length - 1];
    if (corner && code === 20) corner.at[1] = Number(value);
    if (corner && code === 42) corner.bulge = Number(value);
  }
  return corners;
}
