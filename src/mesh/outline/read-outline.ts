import { type Finding, finding } from '../../findings/index.ts';
import { defaultChordError } from '../../geometry/index.ts';
import type { Ring } from '../measure/silhouette.ts';
import type { DrawnPaths } from './drawn-paths.ts';
import { readDxf } from './dxf-outline.ts';
import { limitCorners, TooManyPoints } from './point-limit.ts';
import { crossingOf, joinEnds, orientByNesting, withoutRepeats } from './rings.ts';
import { readSvg } from './svg/svg-outline.ts';

/** Rings in mm, y up: outer ones counter-clockwise, holes clockwise; or none, and at least one stop. */
export interface OutlineOutcome {
  readonly paths?: readonly Ring[];
  readonly findings: readonly Finding[];
}

const mostBytes = 20_000_000;
/** Ends this close are the same point: drawing programs round to a few decimals. */
const samePoint = 0.01;
/** Gaps up to this are closed, and said. */
const smallGap = 1;
/** Points closer together than this add nothing. */
const leastStep = 1e-5;

/**
 * Reads the outline of a stand-in from an SVG or DXF drawing (told apart by content, then by name). Curves become
 * chords at most `chordError` mm off. Never throws on bad input: what is wrong comes as findings about the file.
 * Findings' places are in the drawing's own frame, mm, y up.
 */
export function readOutline(
  bytes: Uint8Array,
  fileName: string,
  chordError: number = defaultChordError,
): OutlineOutcome {
  const file = fileName;
  if (bytes.length > mostBytes) {
    const values = { file, measured: bytes.length, limit: mostBytes };
    return { findings: [finding('outline.too-large', { subject: file, values })] };
  }
  try {
    return readText(decode(bytes), file, chordError);
  } catch (error) {
    if (!(error instanceof TooManyPoints)) throw error;
    const values = { file, what: error.what, limit: error.limit };
    return { findings: [finding('outline.too-many-points', { subject: file, values })] };
  }
}

function readText(text: string, file: string, chordError: number): OutlineOutcome {
  const svg = /^\s*</.test(text) || (/\.svg$/i.test(file) && !/^\s*\d/.test(text));
  const drawing = svg ? readSvg(text, chordError) : readDxf(text, chordError);
  if ('reason' in drawing) {
    const values = { file, ...drawing.reason };
    return { findings: [finding('outline.unreadable', { subject: file, values })] };
  }
  return assemble(drawing, file);
}

/** UTF-8 unless a byte order mark says UTF-16; wrong bytes become replacement signs, which no number survives. */
function decode(bytes: Uint8Array): string {
  const [a, b] = bytes;
  const name = a === 0xff && b === 0xfe ? 'utf-16le' : a === 0xfe && b === 0xff ? 'utf-16be' : 'utf-8';
  return new TextDecoder(name).decode(bytes);
}

function assemble(drawing: DrawnPaths, file: string): OutlineOutcome {
  const findings: Finding[] = [];
  if (drawing.ignored.size > 0) {
    const kinds = [...drawing.ignored].map(([kind, count]) => `${count} ${kind}`);
    findings.push(finding('outline.left-out', { subject: file, values: { file, kinds } }));
  }
  const joined = joinEnds(drawing.open, samePoint);
  const { closed, open } = joinEnds(joined.open, smallGap);
  findings.push(...closed.map((path) => gapClosed(path, file)), ...open.map((path) => leftOpen(path, file)));
  // Fewer than three points enclose nothing; what encloses no area runs back over itself and is said to cross.
  const rings = [...drawing.closed, ...joined.closed, ...closed]
    .map((ring) => withoutRepeats(ring, leastStep))
    .filter((ring) => ring.length > 2);
  if (rings.length === 0)
    return { findings: [...findings, finding('outline.empty', { subject: file, values: { file } })] };
  limitCorners(rings.reduce((sum, ring) => sum + ring.length, 0));
  findings.push(...sizeFindings(rings, drawing.assumed, file));
  const at = crossingOf(rings);
  if (!at) return { paths: orientByNesting(rings), findings };
  const values = { file, crossing: at };
  const place = [at[0], at[1], 0] as const;
  return { findings: [...findings, finding('outline.crosses', { subject: file, place, values })] };
}

const gapOf = (path: Ring): number => {
  const [from, to] = [path[0], path[path.length - 1]];
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
};

const startOf = ([[x, y]]: Ring) => [x, y, 0] as const;

const gapClosed = (path: Ring, file: string): Finding =>
  finding('outline.gap-closed', { subject: file, place: startOf(path), values: { file, limit: smallGap } });

const leftOpen = (path: Ring, file: string): Finding => {
  const values = { file, measured: gapOf(path), limit: smallGap };
  return finding('outline.open-path', { subject: file, place: startOf(path), values });
};

function sizeFindings(rings: readonly Ring[], assumed: DrawnPaths['assumed'], file: string): Finding[] {
  const [width, height] = [span(rings, 0), span(rings, 1)];
  const measured = Math.max(width, height);
  const size = { file, width, height };
  const findings: Finding[] = [];
  if (assumed)
    findings.push(finding('outline.unit-assumed', { subject: file, values: { which: assumed, ...size } }));
  if (measured > 1000 || measured < 0.5)
    findings.push(finding('outline.size', { subject: file, values: { measured, ...size } }));
  return findings;
}

function span(rings: readonly Ring[], axis: 0 | 1): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const ring of rings) {
    for (const point of ring) {
      low = Math.min(low, point[axis]);
      high = Math.max(high, point[axis]);
    }
  }
  return high - low;
}
