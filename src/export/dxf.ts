import { type Path, type Point2, segmentsOf, type Track, toDegrees } from '../geometry/index.ts';
import type { Drawing, Layer } from '../mold/index.ts';
import type { Build } from './build.ts';
import { decimal, flatSheet, layers } from './flat/flat-sheet.ts';
import { drawingPath } from './folders.ts';
import type { ExportFile } from './solid-file.ts';

/** Color numbers of the layers: 7 black or white, 5 blue, 3 green. */
const colors: Readonly<Record<Layer, number>> = { cut: 7, engrave: 5, score: 3 };

export const dxfFiles = ({ drawings }: Build): ExportFile[] =>
  drawings.map((drawing) => ({
    path: drawingPath(drawing, 'dxf'),
    bytes: new TextEncoder().encode(dxfText(drawing)),
  }));

type Pair = readonly [code: number, value: string | number];

/**
 * A drawing as ASCII DXF, release 12 (AC1009), which every cutter reads; mm ($INSUNITS 4, understood by readers that
 * know it). Entities are LINE, ARC, CIRCLE and POLYLINE with bulges, each on its layer; texts are strokes.
 */
export function dxfText(drawing: Drawing): string {
  const sheet = flatSheet(drawing);
  const pairs: Pair[] = [
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1009'],
      [9, '$INSUNITS'],
      [70, 4],
      [9, '$MEASUREMENT'],
      [70, 1],
      [9, '$EXTMIN'],
      ...at([0, 0]),
      [9, '$EXTMAX'],
      ...at([sheet.width, sheet.height]),
    ]),
    ...section('TABLES', [...lineTypes, ...layerTable]),
    ...section(
      'ENTITIES',
      layers.flatMap((layer) => sheet.layers[layer].flatMap((path) => entity(path, layer))),
    ),
    [0, 'EOF'],
  ];
  return `${pairs.map(([code, value]) => `${code}\n${value}`).join('\n')}\n`;
}

const section = (name: string, inside: readonly Pair[]): Pair[] => [
  [0, 'SECTION'],
  [2, name],
  ...inside,
  [0, 'ENDSEC'],
];

const table = (name: string, rows: readonly Pair[], count: number): Pair[] => [
  [0, 'TABLE'],
  [2, name],
  [70, count],
  ...rows,
  [0, 'ENDTAB'],
];

const lineTypes = table(
  'LTYPE',
  [
    [0, 'LTYPE'],
    [2, 'CONTINUOUS'],
    [70, 0],
    [3, 'Solid line'],
    [72, 65],
    [73, 0],
    [40, 0],
  ],
  1,
);

const layerTable = table(
  'LAYER',
  layers.flatMap((layer): Pair[] => [
    [0, 'LAYER'],
    [2, layer],
    [70, 0],
    [62, colors[layer]],
    [6, 'CONTINUOUS'],
  ]),
  layers.length,
);

/** A point at group codes 10, 20, 30 (or 11, 21, 31). */
const at = ([x, y]: Point2, code = 10): Pair[] => [
  [code, decimal(x)],
  [code + 10, decimal(y)],
  [code + 20, 0],
];

const turnOf = (angleRad: number): string => {
  const degrees = toDegrees(angleRad);
  return String(Number((degrees - 360 * Math.floor(degrees / 360)).toFixed(6)));
};

function entity(path: Path, layer: Layer): Pair[] {
  if (path.kind === 'circle')
    return [[0, 'CIRCLE'], [8, layer], ...at(path.center), [40, decimal(path.radius)]];
  const [only, ...more] = segmentsOf(path);
  if (more.length > 0 || path.closed) return polyline(path, layer);
  const { from, to, arc } = only;
  if (!arc) return [[0, 'LINE'], [8, layer], ...at(from), ...at(to, 11)];
  // An ARC runs counter-clockwise.
  const angles = [arc.fromRad, arc.fromRad + arc.sweepRad].sort((a, b) => a - b);
  return [
    [0, 'ARC'],
    [8, layer],
    ...at(arc.center),
    [40, decimal(arc.radius)],
    [50, turnOf(angles[0])],
    [51, turnOf(angles[1])],
  ];
}

const polyline = ({ corners, closed }: Track, layer: Layer): Pair[] => [
  [0, 'POLYLINE'],
  [8, layer],
  [66, 1],
  ...at([0, 0]),
  [70, closed ? 1 : 0],
  ...corners.flatMap(({ at: point, bulge = 0 }): Pair[] => [
    [0, 'VERTEX'],
    [8, layer],
    ...at(point),
    ...(bulge === 0 ? [] : [[42, Number(bulge.toFixed(9))] as const]),
  ]),
  [0, 'SEQEND'],
  [8, layer],
];
