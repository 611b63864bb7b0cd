import { createRequire } from 'node:module';

/** A thing in a DXF file as dxf-parser, which is not ours, reads it; angles in rad. */
export interface DxfEntity {
  readonly type: string;
  readonly layer: string;
  readonly center?: { readonly x: number; readonly y: number };
  readonly radius?: number;
  readonly startAngle?: number;
  readonly endAngle?: number;
  readonly shape?: boolean;
  readonly vertices?: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[];
}

export interface Dxf {
  readonly header: Readonly<Record<string, unknown>>;
  readonly tables: { readonly layer: { readonly layers: Readonly<Record<string, unknown>> } };
  readonly entities: readonly DxfEntity[];
}

/** A CommonJS package whose types name a default export that is not there. */
const DxfParser: new () => { parseSync(text: string): Dxf } = createRequire(import.meta.url)('dxf-parser');

export const readDxf = (text: string): Dxf => new DxfParser().parseSync(text);

/** Area within a closed thing, mm2: a bulge is the tangent of a quarter of its arc's angle (DXF reference, group 42). */
export function areaWithin({ type, radius = 0, vertices = [] }: DxfEntity): number {
  if (type === 'CIRCLE') return Math.PI * radius ** 2;
  const twice = vertices.reduce((sum, { x, y, bulge = 0 }, i) => {
    const next = vertices[(i + 1) % vertices.length];
    const chord = Math.hypot(next.x - x, next.y - y);
    const angle = 4 * Math.atan(bulge);
    const bow = bulge === 0 ? 0 : (chord / 2 / Math.sin(angle / 2)) ** 2 * (angle - Math.sin(angle));
    return sum + x * next.y - next.x * y + bow;
  }, 0);
  return Math.abs(twice) / 2;
}
