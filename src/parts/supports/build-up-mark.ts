import type { UnitSystem } from '../../findings/index.ts';
import { mmPerInch, type Point2, polygon, translation, upsideDown } from '../../geometry/index.ts';
import type { Body, Profile, Scope } from '../../kernel/index.ts';
import { contoursText, contourText } from '../../lettering/index.ts';
import type { Drawing, Side } from '../../mold/index.ts';
import {
  type LabelRoom,
  labelCutter,
  labelDepth,
  labelStroke,
  layLabel,
  leastLetters,
} from '../making/index.ts';

/** Left over an engraved number, mm. Common practice, no published source. */
const roof = 0.6;
/** Left beside it, mm. */
const beside = 0.5;
const tallest = 9;
/** Steps in which sizes and places are tried, mm. */
const sizeStep = 1.5;
const placeStep = 0.5;

/**
 * Engraves a number into the flat face a build-up prints on (z = 0 of its printing frame), to be read from below, as
 * large as fits where the body is at least 1.2 mm thick; the body as it is where 4.5 mm letters find no room.
 */
export function numbered(scope: Scope, body: Body, words: string): Body {
  const room = roomWithin(scope.slice(body, labelDepth + roof), words);
  // Seen from below, y runs the other way.
  const cutter = room && labelCutter(scope, [words], { ...room, y: -room.y });
  return cutter ? scope.subtract(body, [scope.move(cutter, upsideDown, words)], words) : body;
}

/** The largest box for the words inside a profile, of the sizes and places tried; undefined where none fits. */
function roomWithin(profile: Profile, words: string): LabelRoom | undefined {
  const outlines = profile.toPolygons();
  const points = outlines.flat();
  if (points.length === 0) return undefined;
  const [xs, ys] = [0, 1].map((axis) => points.map((point) => point[axis]).sort((a, b) => a - b));
  const [left, right, bottom, top] = [xs[0], xs[xs.length - 1], ys[0], ys[ys.length - 1]];
  for (let height = tallest; height >= leastLetters; height -= sizeStep) {
    const size = boxOf(words, height);
    if (!size) continue;
    for (let y = bottom + size.height / 2; y <= top - size.height / 2; y += placeStep) {
      for (let x = left + size.width / 2; x <= right - size.width / 2; x += placeStep) {
        const room = { x, y, ...size };
        if (holds(outlines, room)) return room;
      }
    }
  }
  return undefined;
}

/** The room words of a height need; undefined where they have letters that stand higher. */
function boxOf(words: string, height: number): Pick<LabelRoom, 'width' | 'height'> | undefined {
  const { strokes } = layLabel([words], { x: 0, y: 0, width: 1000, height: height + labelStroke });
  const xs = strokes.flat().map(([x]) => x);
  if (xs.length === 0) return undefined;
  return { width: Math.max(...xs) - Math.min(...xs) + labelStroke, height: height + labelStroke };
}

type Polygons = readonly (readonly (readonly [number, number])[])[];

/** Whether the edge of a box and a margin round it lie inside the outlines. */
function holds(outlines: Polygons, { x, y, width, height }: LabelRoom): boolean {
  const [w, h] = [width / 2 + beside, height / 2 + beside];
  const count = Math.ceil((2 * Math.max(w, h)) / placeStep);
  for (let i = 0; i <= count; i++) {
    const t = (2 * i) / count - 1;
    const edge: Point2[] = [
      [x + t * w, y - h],
      [x + t * w, y + h],
      [x - w, y + t * h],
      [x + w, y + t * h],
      [x + t * w, y],
    ];
    if (edge.some((point) => !inside(outlines, point))) return false;
  }
  return true;
}

/** Even-odd rule. */
function inside(outlines: Polygons, [x, y]: Point2): boolean {
  let odd = false;
  for (const outline of outlines) {
    for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
      const [[ax, ay], [bx, by]] = [outline[i], outline[j]];
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) odd = !odd;
    }
  }
  return odd;
}

/** The footprint is taken this far over the plane, mm: a section in the plane itself would be a matter of rounding. */
export const footLevel = 0.01;
/** Points of an outline within this of the line between their neighbors are left out, mm. */
const drawnTo = 0.02;

export interface BuildUpShape {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  readonly subject: string;
  readonly x: number;
  readonly y: number;
  readonly side: Side;
  readonly estimated: boolean;
  /** The system its heights are written in. */
  readonly units: UnitSystem;
}

/** Between contours, mm: of what is lower than 6 mm, and of what is higher. */
const contourSteps = { metric: [1, 2], inch: [mmPerInch / 32, mmPerInch / 16] } as const;

/**
 * What a build-up is cut from rubber by: its footprint to cut, contours every millimeter of height (every two from 6
 * mm up; every 1/32 and 1/16 in where the plan is in inches) to score, each with its height, and the number, seen from above about the placement's middle.
 */
export function cuttingOutline(scope: Scope, body: Body, shape: BuildUpShape): Drawing {
  const { id, title, words, subject, x, y, side, estimated, units } = shape;
  const stood = scope.move(body, translation(-x, -y, 0), title);
  const { min, max } = stood.boundingBox();
  const height = side === 1 ? max[2] : -min[2];
  const section = (z: number): Point2[][] =>
    scope.inset(scope.slice(stood, side * z), 0, drawnTo).toPolygons();
  const foot = section(footLevel);
  const step = contourSteps[units][height < 6 ? 0 : 1];
  const levels = Array.from({ length: Math.ceil(height / step) - 1 }, (_, i) => (i + 1) * step);
  const contours = levels
    .map((level) => ({ level, rings: section(level) }))
    .filter(({ rings }) => rings.length > 0);
  const room = roomWithin(scope.slice(stood, side * (labelDepth + roof)), words);
  const at: Point2 = room ? [room.x, room.y] : [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  const upright = { turnRad: 0, anchor: 'middle' } as const;
  return {
    id: `${id}-outline`,
    title: `${title}, ${contoursText(height, step, units)}`,
    subjects: [subject],
    marks: [
      { layer: 'cut', outline: foot.map(polygon), texts: [] },
      {
        layer: 'score',
        outline: contours.flatMap(({ rings }) => rings.map(polygon)),
        texts: contours.map(({ level, rings }) => ({
          words: contourText(level, units),
          at: rings[0].reduce((best, point) => (point[1] > best[1] ? point : best)),
          height: 1.5,
          ...upright,
        })),
      },
      { layer: 'engrave', outline: [], texts: [{ words, at, height: leastLetters, ...upright }] },
    ],
    material: 'rubber',
    thickness: height,
    estimated,
  };
}
