/**
 * Two-phase flow runs the forecast is held to: a general-purpose solver (OpenFOAM 1912, `interFoam` and
 * `compressibleInterFoam`), tin alloy over air: 7000 to 7280 kg/m3, 0.55 N/m, 2.5e-7 m2/s, uniform pull, Courant number 0.3
 * to 0.4, cells of 0.15 to 0.3 mm, plane unless said. They are not run by the tests.
 */
export const metal = { densityKgM3: 7280, tensionNM: 0.55 };

/** A leg without way out under heavy metal, air in it. Bond number by its half width. */
export interface LockRun {
  readonly shape: 'plane' | 'square';
  /** Contact angle measured in the metal, degrees. */
  readonly angle: number;
  readonly bond: number;
  readonly cellsAcross: number;
  /** Where the face of the metal stood: inside the leg, or on the sharp edge of its mouth. */
  readonly face: 'leg' | 'edge';
  readonly outcome: 'locked' | 'exchanges';
}

const run = (
  shape: LockRun['shape'],
  face: LockRun['face'],
  angle: number,
  cellsAcross: number,
  bond: number,
  outcome: LockRun['outcome'],
): LockRun => ({ shape, face, angle, cellsAcross, bond, outcome });

/** The same limits were found at pulls of 70, 140 and 280 m/s2. */
export const lockRuns: readonly LockRun[] = [
  run('plane', 'leg', 90, 14, 2.1, 'locked'),
  run('plane', 'leg', 90, 10, 2.32, 'locked'),
  run('plane', 'leg', 90, 10, 3.23, 'exchanges'),
  run('plane', 'leg', 110, 10, 2.12, 'locked'),
  run('plane', 'leg', 110, 10, 2.6, 'exchanges'),
  run('plane', 'leg', 145, 10, 1.39, 'locked'),
  run('plane', 'leg', 145, 10, 1.62, 'exchanges'),
  run('plane', 'leg', 145, 20, 1.2, 'locked'),
  run('plane', 'leg', 145, 20, 1.39, 'exchanges'),
  run('plane', 'leg', 160, 10, 1.01, 'exchanges'),
  run('plane', 'edge', 145, 13, 2.4, 'locked'),
  run('plane', 'edge', 145, 13, 3.06, 'exchanges'),
  // Coarse: 8 to 12 cells across.
  run('square', 'edge', 145, 10, 2.57, 'locked'),
  run('square', 'edge', 145, 10, 4.01, 'locked'),
  run('square', 'edge', 145, 10, 5.77, 'exchanges'),
  run('square', 'edge', 145, 10, 8.62, 'exchanges'),
];

/** A bar of 25 x 3 mm along the radius, 140 m/s2: share of air (of the bar's area) at the end of the run. */
export const barRuns = [
  { gate: 'outer', share: 0.89, meaning: 'bad' },
  { gate: 'side', share: 0.85, meaning: 'both halves: the gate floods' },
  { gate: 'inner', share: 0.4, meaning: 'gate 1.8 mm, 2.5 m/s: froth at the end of pouring, still falling' },
  {
    gate: 'inner, from a well',
    share: 0.24,
    meaning: 'gate 2.1 mm: 18 % in one place under the gate, 6 % mixed',
  },
  { gate: 'inner, wide, from a well', share: 0.19, meaning: 'gate 3.0 mm: 12 and 7 %, falling' },
] as const;

/** The same bar with a blind leg toward the axis: full of air; with a vent at its tip 37 % are left, falling. */
export const legRuns = { blind: 1, vented: 0.37 };

/** Pressed together by the metal: mean length of the column of air, mm, and by Boyle with the pressure at its face. */
export const columnRun = { run: 11.35, predicted: 11.43 };
