import { middleOf, sides, volumeOf, wall } from '../../../src/fill/cells.ts';
import type { Conditions, Port } from '../../../src/fill/conditions.ts';
import { emptyRoom } from '../../../src/fill/empty-room.ts';
import { airLeft, assumptions, fillRoom } from '../../../src/fill/forecast.ts';
import { gateForecast } from '../../../src/fill/gate.ts';
import { type FlowCase, isIn } from './flow-cases.ts';
import { cellsOfCase, settings, streamOf } from './openfoam.ts';

/** Where the cavity is put on the disc: so far out that the pull is as even as in the runs, mm. */
const out = 700;
/** Each once, the usual first. */
const locks = [...new Set(assumptions.map(({ lock }) => lock))];
type Place = [number, number, number];

/** Shares of air before it is pressed together, as in the runs. */
export interface CaseForecast {
  /** Of the cavity, by what narrow places are assumed to do, the usual first. */
  readonly air: readonly number[];
  /** Of the cavity, that may stay as froth or under a shut gate besides, at most. */
  readonly band: number;
  /** Of each piece by the usual assumption; and how much of the cavity is full when half of the piece is. */
  readonly pieces: Readonly<Record<string, { readonly air: number; readonly halfAt: number }>>;
}

export function forecastOfCase(one: FlowCase): CaseForecast {
  const cells = cellsOfCase(one, out);
  const { densityKgM3, tensionNM, pullMS2 } = settings;
  const conditions: Conditions = {
    field: { speedRpm: (Math.sqrt((pullMS2 * 1000) / out) * 30) / Math.PI, gravity: 0 },
    metal: { densityKgM3, tensionNM },
    wellLevel: out + one.feed[0][0][0],
    flow: streamOf(one),
  };
  const all = Array.from({ length: cells.count }, (_, c) => c);
  const places = all.map((c): Place => {
    const [x, y, z] = middleOf(cells, c);
    return [x - out, y, z];
  });
  const isFed = (c: number): boolean =>
    Array.from({ length: sides }, (_, s) => s).some(
      (s) =>
        cells.beside[sides * c + s] === wall &&
        one.feed.some((box) => isIn(box, stepped(places[c], s, one.cell))),
    );
  const [width, depth] = one.gate;
  const gate: Port = { id: 'gate', kind: 'gate', cells: all.filter(isFed), width, depth };
  const { vent } = one;
  const vented = vent ? all.filter((c) => isIn(vent, places[c])) : [];
  const vents: Port[] = vent ? [{ id: 'vent', kind: 'vent', cells: vented, width: 1.5, depth: 0.75 }] : [];
  const room = fillRoom(emptyRoom(cells, conditions), [gate, ...vents]);
  const volume = volumeOf(cells, all);
  const pockets = locks.map((lock) => airLeft(room, lock));
  const held = new Set(pockets[0].flatMap((pocket) => pocket.cells));
  const pieces = Object.entries(one.pieces).map(([name, isInPiece]) => {
    const list = all.filter((c) => isInPiece(...places[c]));
    const filled = list.map((c) => room.filling.filled[c]).sort((a, b) => a - b);
    const air = list.filter((c) => held.has(c)).length / list.length;
    return [name, { air, halfAt: filled[list.length >> 1] / cells.count }];
  });
  return {
    air: pockets.map((list) => list.reduce((sum, { shutIn }) => sum + shutIn, 0) / volume),
    band: gateForecast(cells, gate, conditions, assumptions[0].lock, volume).band[1] / volume,
    pieces: Object.fromEntries(pieces),
  };
}

/** One cell on, toward a side as in `Cells.beside`. */
function stepped(at: Place, side: number, cell: number): Place {
  const next: Place = [...at];
  next[side >> 1] += side % 2 === 0 ? -cell : cell;
  return next;
}
