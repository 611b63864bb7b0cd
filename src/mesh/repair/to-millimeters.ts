import { type Finding, finding } from '../../findings/index.ts';
import { boundsOf, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import type { FileUnit, RawMesh } from '../raw.ts';
import { guessUnit, mmPer } from './guess-unit.ts';

export interface InMillimeters {
  readonly mesh: TriangleMesh;
  readonly unit: FileUnit;
  /** What was added to the file's positions (mm) to bring the mesh near the origin. */
  readonly moved: Vec3;
  readonly findings: readonly Finding[];
}

/** Beyond this many mm from the origin, float32 coordinates step by more than 6e-5 mm: the mesh is moved back. */
const farOut = 512;
/** Distance, mm, up to which the rounding of a file is not said. */
const coarse = 0.005;
/** Longest sides, mm, outside which a size is doubted, and outside which nothing is done with it. */
const doubtful = [1, 1000] as const;
const absurd = [0.05, 10_000] as const;

/**
 * A raw mesh in mm near the origin, as float32, `larger` times its size in the file; says the unit it took, a doubtful
 * size, and how far it moved it. Sizes are judged and told as they become.
 */
export function toMillimeters(
  raw: RawMesh,
  subject: string,
  wanted: FileUnit | undefined,
  larger = 1,
): InMillimeters {
  const box = boundsOf(raw.positions);
  const sides = ([0, 1, 2] as const).map((axis) => box.max[axis] - box.min[axis]);
  const longest = Math.max(...sides);
  const known = wanted ?? raw.unit;
  const unit = known ?? guessUnit(longest * larger);
  const scale = mmPer[unit] * larger;
  const findings: Finding[] = [];
  if (known === undefined)
    findings.push(
      guessed(
        subject,
        unit,
        sides.map((side) => side * scale),
      ),
    );
  findings.push(...sizeFindings(subject, longest * scale));
  const farthest = scale * Math.max(...box.min.map(Math.abs), ...box.max.map(Math.abs));
  const shift = ([0, 1, 2] as const).map((axis) =>
    farthest > farOut ? -Math.round((scale * (box.min[axis] + box.max[axis])) / 2) : 0,
  );
  // Adding 0 turns -0 into 0; both are the same place.
  const moved: Vec3 = [shift[0] + 0, shift[1] + 0, shift[2] + 0];
  if (moved.some((value) => value !== 0)) findings.push(...recentered(raw, subject, farthest, scale, moved));
  const positions = new Float32Array(raw.positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    positions[i] = raw.positions[i] * scale + moved[0] + 0;
    positions[i + 1] = raw.positions[i + 1] * scale + moved[1] + 0;
    positions[i + 2] = raw.positions[i + 2] * scale + moved[2] + 0;
  }
  return { mesh: { positions, triangles: raw.triangles }, unit, moved, findings };
}

const guessed = (subject: string, unit: FileUnit, [x, y, z]: readonly number[]): Finding =>
  finding('repair.unit-guessed', {
    subject,
    // Another unit than the usual one changes every figure: worth more than a note.
    severity: unit === 'mm' ? 'note' : 'warn',
    values: { measured: Math.max(x, y, z), unit, x, y, z },
  });

function sizeFindings(subject: string, longest: number): Finding[] {
  const isAbsurd = longest < absurd[0] || longest > absurd[1];
  if (!isAbsurd && longest >= doubtful[0] && longest <= doubtful[1]) return [];
  const [least, most] = isAbsurd ? absurd : doubtful;
  const values = { measured: longest, limit: longest < 1 ? least : most, least, most };
  return [finding(isAbsurd ? 'repair.size-absurd' : 'repair.size-doubtful', { subject, values })];
}

function recentered(raw: RawMesh, subject: string, farthest: number, scale: number, moved: Vec3): Finding[] {
  const values = { measured: farthest, limit: farOut, moved };
  const findings = [finding('repair.recentered', { subject, values })];
  // A file of float32 numbers (every binary STL) has lost what is finer than this step.
  const step = scale * stepOf(farthest / scale);
  if (step > coarse && raw.positions.every((value) => Math.fround(value) === value))
    findings.push(finding('repair.coarse', { subject, values: { measured: step, limit: coarse } }));
  return findings;
}

/** Distance between neighbouring float32 numbers near `value`. */
const stepOf = (value: number): number => 2 ** (Math.floor(Math.log2(value)) - 23);
