import {
  type Boss,
  type Channel,
  hexagonCorners,
  type Mold,
  type Notch,
  notchCorners,
  runSides,
  type Tab,
  tabCorners,
  tabFace,
} from '../../mold/index.ts';
import { type Paper, shade } from './paper.ts';

type Point = readonly [number, number];

/** One placement or build-up as it is drawn: its shadow's rings in the mold frame, mm. */
export interface Shadow {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly rings: readonly (readonly Point[])[];
}

/** All that is drawn of a mold seen from above. */
export interface DiscDrawing {
  readonly mold: Mold;
  readonly shadows: readonly Shadow[];
  readonly buildUps: readonly Shadow[];
}

/** Where on the page the axis of the disc is (mm), and how many mm of paper one mm of the disc takes. */
export interface ViewFrame {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/**
 * The lower half's parting face seen from above: rim, well and pouring hole, shadows of the masters, bosses, tabs,
 * notches, channels, the index mark, and build-ups in gray, with their numbers where it is drawn at true size. Lines
 * keep their width at every scale.
 */
export function drawDisc(paper: Paper, { mold, shadows, buildUps }: DiscDrawing, frame: ViewFrame): void {
  const view = new DiscView(paper, frame);
  view.rim(mold);
  for (const buildUp of buildUps) view.ground(buildUp);
  for (const channel of mold.channels) view.channel(channel);
  for (const { x, y, diameter } of mold.ventPins) view.circle([x, y], diameter / 2, 0.25);
  for (const shadow of shadows) view.shadow(shadow);
  if (mold.sprue) {
    view.circle([0, 0], mold.sprue.wellRadius, 0.3);
    view.circle([0, 0], mold.sprue.holeRadius, 0.2, true);
  }
  for (const boss of mold.bosses) view.boss(boss);
  for (const tab of mold.tabs) view.tab(tab, mold.disc.radius);
  for (const notch of mold.notches) view.notch(notch, mold.disc.radius);
  if (frame.scale === 1) for (const buildUp of buildUps) view.number(buildUp);
}

/** Longer names are shortened in their middle, mm. */
const nameWidth = 24;

class DiscView {
  private readonly pen: PDFKit.PDFDocument;

  constructor(
    private readonly paper: Paper,
    private readonly frame: ViewFrame,
  ) {
    this.pen = paper.pen;
  }

  rim({ disc: { radius } }: Mold): void {
    this.circle([0, 0], radius, 0.4);
    this.path(
      [
        [radius - 6, 0],
        [radius, 0],
      ],
      0.5,
      false,
    );
    this.label('0', [radius + 1 / this.frame.scale, 0], 2.4, 'left');
    this.path(
      [
        [-3, 0],
        [3, 0],
      ],
      0.15,
      false,
    );
    this.path(
      [
        [0, -3],
        [0, 3],
      ],
      0.15,
      false,
    );
  }

  shadow({ id, x, y, rings }: Shadow): void {
    for (const ring of rings) this.path(ring, 0.25, true);
    this.label(this.paper.fitted(id, nameWidth, { size: 2.1 }), [x, y], 2.1);
  }

  /** Filled in a light gray; what lies over it is drawn later. */
  ground({ rings }: Shadow): void {
    for (const ring of rings) {
      this.trace(ring);
      this.pen.closePath().fillColor(shade(0.82)).fill();
    }
  }

  number({ id, x, y }: Shadow): void {
    this.label(id, [x, y], 1.6);
  }

  boss({ id, kind, size, x, y, turnRad, acrossFlats, headRadius }: Boss): void {
    if (kind !== 'hexagon') this.circle([x, y], headRadius, 0.25);
    if (acrossFlats > 0) {
      const corners = hexagonCorners(acrossFlats).map((corner): Point => {
        const [u, v] = rotated(corner, turnRad);
        return [x + u, y + v];
      });
      this.path(corners, 0.25, true);
    }
    this.path(
      [
        [x - 1.5, y],
        [x + 1.5, y],
      ],
      0.12,
      false,
    );
    this.path(
      [
        [x, y - 1.5],
        [x, y + 1.5],
      ],
      0.12,
      false,
    );
    const below = Math.max(headRadius, acrossFlats / 2) + 3 / this.frame.scale;
    this.label(`${id}: ${kind} ${size}`, [x, y - below], 2);
  }

  tab(tab: Tab, radius: number): void {
    this.path(tabCorners(tab, radius), 0.25, true);
    this.label(tab.id, rotated([tabFace(tab, radius) - tab.length / 2, 0], tab.angleRad), 2);
  }

  notch(notch: Notch, radius: number): void {
    const { id, angleRad, depth } = notch;
    // From its mouth's left corner round the root to the right one; the mouth itself is open.
    const [right, ...rest] = notchCorners(notch, radius);
    if (right) this.path([...rest, right], 0.4, false);
    this.label(id, rotated([radius - depth - 4, 0], angleRad), 2);
  }

  channel({ kind, run }: Channel): void {
    this.pen.save();
    if (kind === 'vent') this.pen.dash(1, { space: 0.8 });
    const { left, right } = runSides(run);
    for (const side of [left, right]) this.path(side, 0.15, false, 0.3);
    this.pen.restore();
  }

  circle(center: Point, radius: number, width: number, dashed = false): void {
    const [x, y] = this.place(center);
    this.pen.save();
    if (dashed) this.pen.dash(2, { space: 1 });
    this.pen
      .lineWidth(width)
      .strokeColor(shade(0))
      .circle(x, y, radius * this.frame.scale)
      .stroke();
    this.pen.restore();
  }

  private path(points: readonly Point[], width: number, closed: boolean, gray = 0): void {
    this.trace(points);
    if (closed) this.pen.closePath();
    this.pen.lineWidth(width).strokeColor(shade(gray)).stroke();
  }

  private trace(points: readonly Point[]): void {
    points.forEach((point, i) => {
      const [x, y] = this.place(point);
      if (i === 0) this.pen.moveTo(x, y);
      else this.pen.lineTo(x, y);
    });
  }

  /** A short text on a white ground, so that it reads across lines. */
  private label(text: string, at: Point, size: number, anchor: 'middle' | 'left' = 'middle'): void {
    const [x, y] = this.place(at);
    const width = this.pen.font('plain').fontSize(size).widthOfString(text);
    const left = anchor === 'middle' ? x - width / 2 : x;
    this.pen
      .rect(left - 0.3, y - size / 2 - 0.2, width + 0.6, size + 0.5)
      .fillColor(shade(1), 0.8)
      .fill();
    this.pen.fillOpacity(1);
    this.paper.write(text, left, y - size / 2, { size, gray: 0.2 });
  }

  private place([x, y]: Point): Point {
    return [this.frame.x + x * this.frame.scale, this.frame.y - y * this.frame.scale];
  }
}

const rotated = ([x, y]: Point, angle: number): Point => [
  x * Math.cos(angle) - y * Math.sin(angle),
  x * Math.sin(angle) + y * Math.cos(angle),
];
