import { circumscribed, type Matrix4, segmentsFor, translation } from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import { overlap, plugFloor, type Sprue, shaftRadius } from '../../mold/index.ts';
import { type LabelRoom, labelCutter, roomInRound } from '../making/index.ts';

/** Left between a label and an edge, mm. */
const beside = 1;
/** Share of a turn that letters may go round the puller hole. */
const mostOfTurn = 0.8;
/** y becomes z, z becomes -y: an outline drawn in (x, y) stands up. */
const standUp: Matrix4 = [1, 0, 0, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 0, 0, 1];

/** A form or plug as it is to be cut: `smaller` all round than the form, its foot at z = `foot`. */
export interface Stem {
  readonly sprue: Sprue;
  readonly upper: number;
  readonly smaller: number;
  readonly foot: number;
  readonly chordError: number;
  /** How much wider across the puller hole is drawn. */
  readonly holes: number;
}

/** Cutters of the puller hole, circumscribed, and of the two flats on the grip. */
export function gripCutters(scope: Scope, stem: Stem): Body[] {
  const { sprue, upper, smaller, foot, chordError, holes } = stem;
  const { puller, flats, grip } = sprue;
  const top = upper + grip;
  const radius = shaftRadius(sprue, upper) - smaller;
  const cutters: Body[] = [];
  if (puller) {
    const depth = Math.min(puller.depth, top - foot - plugFloor);
    const bore = (puller.diameter + holes) / 2;
    const segments = segmentsFor(bore, chordError);
    const wide = circumscribed(bore, segments);
    const outline = [
      [0, top - depth],
      [wide, top - depth],
      [wide, top + overlap],
      [0, top + overlap],
    ] as const;
    cutters.push(scope.revolve(outline, segments, 'puller hole'));
  }
  if (flats !== undefined && flats < 2 * radius && grip > 0) {
    for (const side of [-1, 1]) {
      const [near, far] = [(side * flats) / 2, side * (radius + overlap)];
      const box = [
        [-far, near],
        [far, near],
        [far, far],
        [-far, far],
      ] as const;
      cutters.push(scope.extrude([box], upper, top + overlap, 'flats'));
    }
  }
  return cutters;
}

/**
 * Cutter of the vent flat on the +x side: everywhere `vent` deep, leaning with the shaft so that it leaves the rubber
 * as the shaft does, from 1 mm over the fillet at the mouth to the top. None where the plan asks for none.
 */
export function ventCutter(scope: Scope, { sprue, upper }: Stem): Body[] {
  const { vent } = sprue;
  if (vent === undefined) return [];
  const from = ventFoot(sprue);
  const top = shaftRadius(sprue, upper) - vent;
  const past = sprue.wellRadius + overlap;
  const outline = [
    [shaftRadius(sprue, from) - vent, from],
    [past, from],
    [past, upper + sprue.grip + overlap],
    [top, upper + sprue.grip + overlap],
    [top, upper],
  ] as const;
  return [scope.move(scope.extrude([outline], -past, past, 'vent flat'), standUp, 'vent flat')];
}

/** Where the vent flat begins, over the parting plane. */
const ventFoot = ({ fillet }: Sprue): number => fillet + overlap;

/** Room for a label on top of the grip: its middle, or round the puller hole. */
export function gripRoom({ sprue, upper, smaller, holes }: Stem): LabelRoom {
  const radius = Math.max(0, shaftRadius(sprue, upper) - smaller - (sprue.vent ?? 0) - beside);
  const flat = Math.min(radius, (sprue.flats ?? Number.POSITIVE_INFINITY) / 2 - beside);
  const { puller } = sprue;
  if (!puller) return { ...roomInRound(radius, Math.min(radius, 2 * flat)), x: 0, y: 0 };
  const inner = (puller.diameter + holes) / 2 + beside;
  const bend = (inner + Math.max(inner, flat)) / 2;
  return { x: 0, y: 0, width: mostOfTurn * 2 * Math.PI * bend, height: Math.max(0, flat - inner), bend };
}

export function gripLabel(scope: Scope, words: readonly string[], stem: Stem): Body[] {
  const cutter = labelCutter(scope, words, gripRoom(stem));
  return cutter ? [scope.move(cutter, translation(0, 0, stem.upper + stem.sprue.grip), 'label')] : [];
}
