import { toDegrees } from '../geometry/index.ts';

/** A mesh as a master of a new plan. Lengths in mm. */
export interface StarterPiece {
  readonly id: string;
  /** As the plan is to name it. */
  readonly file: string;
  readonly unit: 'micron' | 'mm' | 'cm' | 'm' | 'in' | 'ft';
  /** Whether the file says its unit itself. */
  readonly unitSaid: boolean;
  /** Turns by which it lies; none where it lies as in its file. */
  readonly lie?: { readonly turnXRad: number; readonly turnYRad: number } | undefined;
  /** Over all, as in its file. */
  readonly size: readonly [number, number, number];
  /** Undercut that a flat parting plane leaves, of its volume. */
  readonly undercut: number;
  readonly count: number | 'as many as fit';
}

/** Common practice, no published source. */
const rimSpeed = '6.3 m/s';

const poured = [
  '# What is poured, and how fast the rim runs: to start from; put in the figures of the makers of your alloy and machine.',
  'alloy: { name: lead-free pewter }',
  `spin: { rimSpeed: ${rimSpeed} }`,
];

/** Masters, what is wanted of them, build-ups, and what is poured: the sections of a plan that begins with meshes. */
export function pieceSections(
  pieces: readonly StarterPiece[],
  process: 'rubber' | 'rigid' | 'poured',
  write: (mm: number) => string,
): string[] {
  return [
    [
      '# The masters, from their files. Where a file names no unit it was guessed by its size: look whether the sizes are right.',
      '# Each lies as in its file, or turned where that leaves clearly less undercut.',
      'masters:',
      ...pieces.map((piece) => `  ${masterLine(piece, write)}`),
    ],
    [
      '# What `discwright arrange --write` lays on the disc, in place of what it laid before: a count, as many as fit, or',
      '# fill the gaps. `locked: true` behind a placement keeps it where it is.',
      'arrange:',
      '  pieces:',
      ...pieces.map(({ id, count }) => `    ${id}: { count: ${count} }`),
    ],
    ['# Build-ups wherever a part has nothing under it.', 'supports: auto'],
    // Plastic halves take no tin alloy.
    ...(process === 'rigid' ? [] : [poured]),
  ].map((lines) => lines.join('\n'));
}

function masterLine(
  { id, file, unit, unitSaid, lie, size, undercut }: StarterPiece,
  write: (mm: number) => string,
) {
  const turns = lie
    ? (
        [
          ['turnX', lie.turnXRad],
          ['turnY', lie.turnYRad],
        ] as const
      ).flatMap(([name, rad]) => {
        const degrees = Math.round(toDegrees(rad));
        return degrees === 0 ? [] : [`${name}: ${degrees}`];
      })
    : [];
  const fields = [
    `file: ${/^[A-Za-z0-9_./-]+$/.test(file) ? file : JSON.stringify(file)}`,
    `unit: ${unit}`,
    ...(turns.length > 0 ? [`lie: { ${turns.join(', ')} }`] : []),
  ];
  const about = [
    `${size.map(write).join(' x ')}${unitSaid ? '' : ', unit guessed'}`,
    `undercut ${(100 * undercut).toFixed(1)} %`,
  ];
  return `${id}: { ${fields.join(', ')} } # ${about.join('; ')}`;
}
