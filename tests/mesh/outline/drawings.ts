import { expect } from 'vitest';
import { type OutlineOutcome, readOutline, ringArea } from '../../../src/mesh/index.ts';

/** Drawings written by hand for the readers' tests. */
export const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
export const svg = (
  inner: string,
  head = 'width="100mm" height="100mm" viewBox="0 0 100 100"',
): OutlineOutcome =>
  readOutline(bytes(`<svg xmlns="http://www.w3.org/2000/svg" ${head}>${inner}</svg>`), 'leaf.svg');
export const codesOf = (outcome: OutlineOutcome): string[] => outcome.findings.map(({ code }) => code);
export const areasOf = (outcome: OutlineOutcome): number[] => (outcome.paths ?? []).map(ringArea);
/** What inscribed chords of 0.01 mm sagitta may lose of a circle: at most 0.01 mm all along. */
export const lost = (radius: number): number => 2 * Math.PI * radius * 0.01;

export const expectArea = (outcome: OutlineOutcome, wanted: number, margin: number): void => {
  expect(outcome.findings).toEqual([]);
  const total = areasOf(outcome).reduce((sum, area) => sum + area, 0);
  expect(total).toBeLessThanOrEqual(wanted + 1e-6);
  expect(total).toBeGreaterThanOrEqual(wanted - margin);
};

/** A DXF text of an ENTITIES section; pairs of code and value. */
export const dxf = (
  entities: readonly (readonly [number, string | number])[],
  unit?: number,
): OutlineOutcome => {
  const header: [number, string | number][] =
    unit === undefined
      ? []
      : [
          [0, 'SECTION'],
          [2, 'HEADER'],
          [9, '$INSUNITS'],
          [70, unit],
          [0, 'ENDSEC'],
        ];
  const pairs = [...header, [0, 'SECTION'], [2, 'ENTITIES'], ...entities, [0, 'ENDSEC'], [0, 'EOF']];
  return readOutline(bytes(`${pairs.flat().join('\r\n')}\r\n`), 'plate.dxf');
};

export const line = (x1: number, y1: number, x2: number, y2: number): [number, string | number][] => [
  [0, 'LINE'],
  [10, x1],
  [20, y1],
  [11, x2],
  [21, y2],
];

export const light = (
  flags: number,
  corners: readonly (readonly [number, number, number?])[],
): [number, string | number][] => [
  [0, 'LWPOLYLINE'],
  [90, corners.length],
  [70, flags],
  ...corners.flatMap(([x, y, bulge]): [number, number][] => [
    [10, x],
    [20, y],
    ...(bulge === undefined ? [] : [[42, bulge] as [number, number]]),
  ]),
];
