import { SVGPathData, SVGPathDataTransformer } from 'svg-pathdata';
import { type Point2, toRadians } from '../../../geometry/index.ts';
import { arcPoints, cubicPoints, quadraticPoints } from '../flatten.ts';
import { limitPoints } from '../point-limit.ts';
import { SvgFault } from './svg-fault.ts';

export interface Paths {
  readonly closed: readonly (readonly Point2[])[];
  readonly open: readonly (readonly Point2[])[];
}

/** A path's data in user units, curves as chords. Throws TooManyPoints. */
export function pathPaths(d: string, chordError: number): Paths {
  const paths: { closed: Point2[][]; open: Point2[][] } = { closed: [], open: [] };
  let commands: SVGPathData['commands'];
  try {
    commands = new SVGPathData(d)
      .toAbs()
      .normalizeHVZ(false)
      .normalizeST()
      .transform(SVGPathDataTransformer.ANNOTATE_ARCS()).commands;
  } catch (error) {
    throw new SvgFault({ which: 'path', fault: error instanceof Error ? error.message : String(error) });
  }
  let path: Point2[] = [];
  let count = 0;
  const end = (): void => {
    if (path.length > 1) paths.open.push(path);
    path = [];
  };
  for (const command of commands) {
    if (command.type === SVGPathData.MOVE_TO) {
      end();
      path = [[command.x, command.y]];
    } else if (command.type === SVGPathData.CLOSE_PATH) {
      const [start] = path;
      if (path.length > 1) paths.closed.push(path);
      // A path may go on after it is closed, from where it began.
      path = start ? [start] : [];
    } else {
      const points = stroke(command, path[path.length - 1], chordError);
      count += points.length;
      limitPoints(count);
      path.push(...points);
    }
  }
  end();
  if (![...paths.closed, ...paths.open].flat(2).every(Number.isFinite))
    throw new SvgFault({ which: 'bounds' });
  return paths;
}

type Command = SVGPathData['commands'][number];

function stroke(command: Command, from: Point2, chordError: number): Point2[] {
  switch (command.type) {
    case SVGPathData.LINE_TO:
      return [[command.x, command.y]];
    case SVGPathData.QUAD_TO:
      return quadraticPoints(from, [command.x1, command.y1], [command.x, command.y], chordError);
    case SVGPathData.CURVE_TO:
      return cubicPoints(
        from,
        [command.x1, command.y1],
        [command.x2, command.y2],
        [command.x, command.y],
        chordError,
      );
    case SVGPathData.ARC: {
      const { cX, cY, phi1, phi2, rX, rY, xRot, x, y } = command;
      if (cX === undefined || cY === undefined || phi1 === undefined || phi2 === undefined) return [[x, y]];
      if (!(rX > 0) || !(rY > 0)) return [[x, y]];
      const [c, s] = [Math.cos(toRadians(xRot)), Math.sin(toRadians(xRot))];
      const [from, to] = [toRadians(phi1), toRadians(phi2)];
      const points = arcPoints([cX, cY], [rX * c, rX * s], [-rY * s, rY * c], from, to, chordError);
      return [...points.slice(1, -1), [x, y]];
    }
    default:
      throw new SvgFault({ which: 'command' });
  }
}
