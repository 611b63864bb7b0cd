import { type Path, segmentsOf } from '../geometry/index.ts';
import type { Drawing, Layer } from '../mold/index.ts';
import type { Build } from './build.ts';
import { decimal, type FlatSheet, flatSheet, layers } from './flat/flat-sheet.ts';
import { drawingPath } from './folders.ts';
import type { ExportFile } from './solid-file.ts';

/** Width of the lines, mm; a cutter follows their middle. */
const stroke = 0.2;
const colors: Readonly<Record<Layer, string>> = { cut: '#000000', engrave: '#0000c0', score: '#007000' };

export const svgFiles = ({ drawings }: Build): ExportFile[] =>
  drawings.map((drawing) => ({
    path: drawingPath(drawing, 'svg'),
    bytes: new TextEncoder().encode(svgText(drawing)),
  }));

/**
 * A drawing as SVG 1.1 at true size: one user unit is 1 mm, y turned to run down. One group for each layer, by its
 * name; arcs are A commands, full circles `circle`; texts are strokes.
 */
export function svgText(drawing: Drawing): string {
  const sheet = flatSheet(drawing);
  const [width, height] = [decimal(sheet.width), decimal(sheet.height)];
  const groups = layers.filter((layer) => sheet.layers[layer].length > 0);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escaped(drawing.title)}</title>`,
    ...groups.flatMap((layer) => group(layer, sheet)),
    '</svg>',
    '',
  ].join('\n');
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

const group = (layer: Layer, { layers: on, height }: FlatSheet): string[] => [
  `<g id="${layer}" fill="none" stroke="${colors[layer]}" stroke-width="${stroke}" stroke-linecap="round">`,
  ...on[layer].map((path) => element(path, height)),
  '</g>',
];

function element(path: Path, height: number): string {
  const point = ([x, y]: readonly [number, number]): string => `${decimal(x)} ${decimal(height - y)}`;
  if (path.kind === 'circle') {
    const [x, y] = path.center;
    return `<circle cx="${decimal(x)}" cy="${decimal(height - y)}" r="${decimal(path.radius)}"/>`;
  }
  const steps = segmentsOf(path).map(({ to, arc }) => {
    if (!arc) return `L${point(to)}`;
    const large = Math.abs(arc.sweepRad) > Math.PI ? 1 : 0;
    // Counter-clockwise with y up is counter-clockwise to the eye: sweep 0.
    return `A${decimal(arc.radius)} ${decimal(arc.radius)} 0 ${large} ${arc.sweepRad > 0 ? 0 : 1} ${point(to)}`;
  });
  return `<path d="M${point(path.corners[0].at)}${steps.join('')}${path.closed ? 'Z' : ''}"/>`;
}
