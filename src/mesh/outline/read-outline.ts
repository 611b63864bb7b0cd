import { type Finding, type FindingCode, type FindingDetails, finding } from '../../findings/index.ts';
import { defaultChordError } from '../../kernel/index.ts';
import type { Ring } from '../measure/silhouette.ts';
import type { DrawnPaths } from './drawn-paths.ts';
import { readDxf } from './dxf-outline.ts';
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
  const say = (code: FindingCode, says: string, details: Partial<FindingDetails> = {}): Finding =>
    finding(code, { subject: fileName, says: `${fileName}: ${says}.`, ...details });
  if (bytes.length > mostBytes) {
    return {
      findings: [
        say('outline.too-large', `the outline file has ${bytes.length} bytes`, {
          measured: { value: bytes.length, unit: 'bytes' },
          limit: { value: mostBytes, unit: 'bytes' },
        }),
      ],
    };
  }
  const text = decode(bytes);
  const svg = /^\s*</.test(text) || (/\.svg$/i.test(fileName) && !/^\s*\d/.test(text));
  const drawing = svg ? readSvg(text, chordError) : readDxf(text, chordError);
  if ('reason' in drawing) return { findings: [say('outline.unreadable', drawing.reason)] };
  return assemble(drawing, say);
}

/** UTF-8 unless a byte order mark says UTF-16; wrong bytes become replacement signs, which no number survives. */
function decode(bytes: Uint8Array): string {
  const [a, b] = bytes;
  const name = a === 0xff && b === 0xfe ? 'utf-16le' : a === 0xfe && b === 0xff ? 'utf-16be' : 'utf-8';
  return new TextDecoder(name).decode(bytes);
}

type Say = (code: FindingCode, says: string, details?: Partial<FindingDetails>) => Finding;

function assemble(drawing: DrawnPaths, say: Say): OutlineOutcome {
  const findings: Finding[] = [];
  if (drawing.ignored.size > 0) {
    const list = [...drawing.ignored].map(([kind, count]) => `${count} ${kind}`).join(', ');
    findings.push(say('outline.left-out', `not read: ${list}`));
  }
  const joined = joinEnds(drawing.open, samePoint);
  const closed = [...drawing.closed, ...joined.closed];
  for (const path of joinEnds(joined.open, smallGap).closed) {
    closed.push(path);
    findings.push(gapFinding(path, say));
  }
  for (const path of joinEnds(joined.open, smallGap).open) {
    const gap = gapOf(path);
    findings.push(
      say('outline.open-path', `a path is open by ${gap.toFixed(2)} mm and was left out`, {
        place: [path[0][0], path[0][1], 0],
        measured: { value: gap, unit: 'mm' },
        limit: { value: smallGap, unit: 'mm' },
      }),
    );
  }
  // Fewer than three points enclose nothing; what encloses no area runs back over itself and is said to cross.
  const rings = closed.map((ring) => withoutRepeats(ring, leastStep)).filter((ring) => ring.length > 2);
  if (rings.length === 0) {
    return { findings: [...findings, say('outline.empty', 'there is no closed path with an inside')] };
  }
  const size = sizeOf(rings);
  if (drawing.assumed !== undefined) {
    findings.push(say('outline.unit-assumed', `${drawing.assumed}; that makes it ${size.text}`));
  }
  if (size.most > 1000 || size.most < 0.5) {
    findings.push(
      say('outline.size', `the outline is ${size.text}`, { measured: { value: size.most, unit: 'mm' } }),
    );
  }
  const at = crossingOf(rings);
  if (at) {
    const place = [at[0], at[1], 0] as const;
    const says = `the outline crosses or touches itself at x ${at[0].toFixed(2)}, y ${at[1].toFixed(2)} mm`;
    return { findings: [...findings, say('outline.crosses', says, { place })] };
  }
  return { paths: orientByNesting(rings), findings };
}

const gapOf = (path: Ring): number => {
  const [from, to] = [path[0], path[path.length - 1]];
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
};

function gapFinding(path: Ring, say: Say): Finding {
  return say('outline.gap-closed', `a path with gaps of up to ${smallGap} mm was closed`, {
    place: [path[0][0], path[0][1], 0],
    limit: { value: smallGap, unit: 'mm' },
  });
}

function sizeOf(rings: readonly Ring[]): { readonly most: number; readonly text: string } {
  const span = (axis: 0 | 1): number => {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const ring of rings) {
      for (const point of ring) {
        low = Math.min(low, point[axis]);
        high = Math.max(high, point[axis]);
      }
    }
    return high - low;
  };
  const [wide, high] = [span(0), span(1)];
  return { most: Math.max(wide, high), text: `${wide.toFixed(2)} x ${high.toFixed(2)} mm` };
}
