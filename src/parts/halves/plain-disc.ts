import type { Finding, UnitSystem } from '../../findings/index.ts';
import { boundsOfOutline, line, type Point2, segmentsFor } from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import { diameterText } from '../../lettering/index.ts';
import { type Disc, indexMark, overlap, type Sprue } from '../../mold/index.ts';
import {
  fromOuterFace,
  type HalfName,
  type LabelRoom,
  labelCutter,
  labelFindings,
  labelStroke,
  layLabel,
} from '../making/index.ts';

/** What of a mold a blank depends on. */
export interface DiscShape {
  readonly disc: Disc;
  readonly sprue?: Sprue;
  readonly chordError: number;
  /** Of the plan; engraved beside the label. */
  readonly revision: string;
  /** The system its diameter is engraved in. */
  readonly units: UnitSystem;
}

/** The disc of one half in the mold frame, rim polygon inscribed, its outer edge chamfered; no opening, no marks. */
export function discBody(scope: Scope, half: HalfName, shape: DiscShape): Body {
  const { lower, upper } = shape.disc;
  return half === 'lower'
    ? chamferedDisc(scope, shape, -lower, 0, ['lower'])
    : chamferedDisc(scope, shape, 0, upper, ['upper']);
}

/** Both halves' discs in one body, so that one cut parts them. */
export const wholeDiscBody = (scope: Scope, shape: DiscShape): Body =>
  chamferedDisc(scope, shape, -shape.disc.lower, shape.disc.upper, ['lower', 'upper']);

/**
 * Extruded rather than revolved: a revolved disc's flat faces are fans of slivers from the axis, each of which meets a
 * good part of the cavities, and cutting takes half as long again.
 */
function chamferedDisc(
  scope: Scope,
  { disc, chordError }: DiscShape,
  bottom: number,
  top: number,
  chamfered: readonly HalfName[],
): Body {
  const segments = segmentsFor(disc.radius, chordError);
  const rim = Array.from({ length: segments }, (_, i) => {
    const angle = (2 * Math.PI * i) / segments;
    return [disc.radius * Math.cos(angle), disc.radius * Math.sin(angle)] as const;
  });
  const plain = scope.extrude([rim], bottom, top, 'disc');
  if (!(disc.rimChamfer > 0)) return plain;
  return scope.subtract(
    plain,
    chamfered.map((half) => chamferCutter(scope, disc, half, segments)),
    'disc',
  );
}

/** A ring that takes the 45 degree chamfer off one outer edge. */
function chamferCutter(
  scope: Scope,
  { radius, rimChamfer, lower, upper }: Disc,
  half: HalfName,
  segments: number,
): Body {
  const z = half === 'upper' ? upper : lower;
  const ring = [
    [radius - rimChamfer - overlap, z + overlap],
    [radius + overlap, z - rimChamfer - overlap],
    [radius + overlap, z + overlap],
  ] as const;
  const drawn = half === 'upper' ? ring : ring.map(([r, height]) => [r, -height] as const).reverse();
  return scope.revolve(drawn, segments, 'rim chamfer');
}

/** Cutters of what is drawn on one half's outer face: index mark and label. */
export function markCutters(scope: Scope, half: HalfName, shape: DiscShape): Body[] {
  const { disc } = shape;
  const toMold = fromOuterFace(half, disc);
  const mark = indexCutter(scope, disc);
  const label = labelCutter(scope, labelWords(half, shape), labelRoom(shape));
  return [mark, ...(label ? [label] : [])].map((body) => scope.move(body, toMold, 'marks'));
}

/** What of one half's label comes out otherwise than written. */
export const markFindings = (half: HalfName, shape: Omit<DiscShape, 'chordError'>): Finding[] =>
  labelFindings(`${half} half`, labelWords(half, shape), labelRoom(shape));

/** Corners of the box round the label as the half stands to be made, parting face up; nothing where there is none. */
export function labelCorners(half: HalfName, shape: Omit<DiscShape, 'chordError'>): Point2[][] {
  const points = layLabel(labelWords(half, shape), labelRoom(shape)).strokes.flat();
  if (points.length === 0) return [];
  // Either outer face, turned down, is seen from above with y run the other way.
  const { min, max } = boundsOfOutline([line(...points.map(([x, y]): Point2 => [x, -y]))]);
  const by = labelStroke / 2;
  const [left, low, right, high] = [min[0] - by, min[1] - by, max[0] + by, max[1] + by];
  return [
    [
      [left, low],
      [right, low],
      [right, high],
      [left, high],
    ],
  ];
}

/** Name, half, diameter and plan revision; a disc without a name stays plain. */
export function labelWords(
  half: HalfName,
  { disc, revision, units }: Pick<DiscShape, 'disc' | 'revision' | 'units'>,
): string[] {
  if (disc.label.trim() === '') return [];
  const diameter = diameterText(2 * disc.radius, units);
  return [`${disc.label.trim()} ${half}`, revision === '' ? diameter : `${diameter} r${revision}`];
}

/** A V-groove along +x; at the rim it is cut below the chamfer too, so that it shows from the side. */
function indexCutter(scope: Scope, disc: Disc): Body {
  const { width, length, depth } = indexMark;
  const from = disc.radius - disc.rimChamfer - length;
  const to = disc.radius + overlap;
  // The groove's floor drops towards the rim by the chamfer.
  const ends = [
    [from, depth],
    [to, depth + disc.rimChamfer],
  ] as const;
  const points = ends.flatMap(([x, deep]) => {
    const half = (width / 2) * ((deep + overlap) / depth);
    return [
      [x, -half, overlap],
      [x, half, overlap],
      [x, 0, -deep],
    ] as const;
  });
  return scope.hull(points, 'index mark');
}

/** A strip between the opening and the rim on the -y side, as wide as the disc is there. */
function labelRoom({ disc, sprue }: Pick<DiscShape, 'disc' | 'sprue'>): LabelRoom {
  const outer = disc.radius - disc.rimChamfer - 2;
  const inner = sprue ? sprue.holeRadius + 2 : 0;
  const height = Math.min(18, (outer - inner) / 2);
  const y = -(inner + (outer - inner) / 2);
  const half = Math.sqrt(Math.max(0, outer ** 2 - (Math.abs(y) + height / 2) ** 2));
  return { x: 0, y, width: 2 * half - labelStroke, height };
}
