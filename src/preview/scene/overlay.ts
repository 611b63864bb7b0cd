import { Group, Sprite } from 'three';
import { LineMaterial } from 'three/addons/lines/LineMaterial.js';
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js';
import type { Side } from './kinds.ts';
import { pocketMark } from './pocket-mark.ts';
import type { Stage } from './stage.ts';
import { dropLabel, styleColor, textLabel } from './text-label.ts';

type Place = readonly [number, number, number];

/** Lines and words drawn before everything else: mm in the frame of one side of the mold, widths in px. */
export class Overlay {
  private readonly group = new Group();

  constructor(
    private readonly stage: Stage,
    private readonly side: Side,
  ) {
    stage.sides[side].add(this.group);
  }

  /** Straight lines, two places each. */
  lines(places: readonly Place[], color: string, width: number): void {
    const geometry = new LineSegmentsGeometry();
    geometry.setPositions(places.flat());
    const line = new LineSegments2(geometry, new LineMaterial({ color, linewidth: width, depthTest: false }));
    line.renderOrder = 50;
    this.group.add(line);
  }

  word(text: string, place: Place, color: string): void {
    const label = textLabel(text, color, this.stage.canvas.clientHeight, this.stage.camera.fov);
    label.position.set(...place);
    this.group.add(label);
  }

  /** A pocket of air. */
  pocket(air: Parameters<typeof pocketMark>[0], place: Place): void {
    const { canvas, camera } = this.stage;
    const look = { ink: styleColor('--stop'), paper: styleColor('--paper') };
    const mark = pocketMark(air, look, { viewHeight: canvas.clientHeight, fovDegrees: camera.fov });
    mark.position.set(...place);
    this.group.add(mark);
  }

  clear(): void {
    for (const child of [...this.group.children]) {
      this.group.remove(child);
      if (child instanceof Sprite) dropLabel(child);
      else if (child instanceof LineSegments2) {
        child.geometry.dispose();
        child.material.dispose();
      }
    }
  }

  remove(): void {
    this.clear();
    this.stage.sides[this.side].remove(this.group);
  }
}
