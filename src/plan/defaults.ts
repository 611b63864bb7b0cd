import { mmPerInch, toRadians } from '../geometry/index.ts';
import { channelDraftRad } from './sections/channels.ts';
import type { Sink } from './sections/placements.ts';

const inches = (value: number): number => value * mmPerInch;

export const placementDefaults: { readonly turnRad: number; readonly startRad: number; readonly sink: Sink } =
  {
    turnRad: 0,
    startRad: 0,
    // The widest contour is where a master leaves both halves.
    sink: 'silhouette',
  };

export const discDefaults = {
  /** Thickness of a half: stock runs from 1/4 to 1 in by 1/8 in. */
  thickness: inches(3 / 4),
  rimChamfer: 1,
  label: '',
} as const;

/** Pour hole of a 6, 9 and 12 in disc; in between in proportion. Diameters. */
const holes = [
  { disc: inches(6), hole: 25 },
  { disc: inches(9), hole: 32 },
  { disc: inches(12), hole: 38 },
] as const;

/** The sprue form's usual sizes for a disc of the given diameter. */
export function sprueDefaults(discDiameter: number) {
  const holeDiameter = holeFor(discDiameter);
  const wellDiameter = 1.5 * holeDiameter;
  return {
    holeDiameter,
    // A taper that a form leaves without tearing the rubber.
    draftRad: toRadians(3),
    wellDiameter,
    wellDepth: Math.min(10, Math.max(6, 0.03 * discDiameter)),
    domeDiameter: 0.6 * holeDiameter,
    domeHeight: Math.min(6, Math.max(3, 0.015 * discDiameter)),
    fillet: 1.5,
    grip: 15,
  };
}

function holeFor(disc: number): number {
  const [six, nine, twelve] = holes;
  // A disc under 6 in scales with its diameter; over 12 in the hole of the 12 in disc is kept.
  if (disc <= six.disc) return (six.hole * disc) / six.disc;
  if (disc >= twelve.disc) return twelve.hole;
  const [low, high] = disc < nine.disc ? [six, nine] : [nine, twelve];
  return low.hole + ((high.hole - low.hole) * (disc - low.disc)) / (high.disc - low.disc);
}

export const bossDefaults = {
  /** Radial clearance of a socket in rigid halves: printed sliding fits run 0.2 to 0.3 mm a side. */
  clearance: 0.25,
  /** Lean of the walls of sockets in rigid halves where no process is named. */
  socketDraftRad: toRadians(1),
  /** Lean of a hexagon's flats: well past where steep tapers stick. */
  hexagonDraftRad: toRadians(10),
  /** How far cured rubber gives sideways. */
  flex: 0.1,
  turnRad: 0,
} as const;

export const tabDefaults = { width: 20, length: 12, height: 3, inset: 1 } as const;

export const notchDefaults = { width: 6, depth: 4 } as const;

export const channelDefaults = {
  // It feeds several gates; common practice, no published source.
  runner: {
    width: 5,
    depth: 2.5,
    endWidth: 5,
    endDepth: 2.5,
    section: { kind: 'half-round' },
    half: 'upper',
  },
  gate: { width: 3, depth: 1.5, endWidth: 3, endDepth: 1.5, section: { kind: 'half-round' }, half: 'upper' },
  vent: {
    width: 1,
    depth: 0.3,
    endWidth: 1,
    endDepth: 0.3,
    section: { kind: 'trapezoid', draftRad: channelDraftRad },
    half: 'upper',
  },
} as const;

export const partingDefaults = {
  surface: 'follow',
  // Common practice, no published source.
  slopeRad: toRadians(45),
  /** How far the surface may leave the plane, as a share of the half's thickness on that side. */
  limitShare: 0.5,
  cell: 0.125,
} as const;

export const shrinkDefaults = { alloy: 0, rubber: 0 } as const;

/** ISO 216, what most of the world prints on; ANSI/ASME Y14.1 size A where shops speak inches. */
export const paperDefault = { metric: 'A4', inch: 'Letter' } as const;

export const fixtureDefaults = {
  material: 'PLA',
  clearance: 0.2,
  chordError: 0.02,
  relieve: false,
  compensation: 0,
  // Common practice, no published source.
  bedMargin: 3,
} as const;

export const limitDefaults = {
  cover: 3,
  wall: 3,
  /** Thinner tongues of rubber between channels tear or bend into the stream; common practice, no published source. */
  web: 1,
  cavityToWell: 8,
  cavityToBoss: 5,
  cavityToRim: 10,
  bossToRim: 6,
  /** Or the boss radius, whichever is larger. */
  falseSeat: 3,
  /** A step at the parting line that still files off. */
  mismatch: 0.5,
  /** Of the cavity's volume: more undercut than this and rubber tears or the casting bends when it is pulled out. */
  undercutShare: 0.1,
  /** In thicknesses: soft metal longer and thinner than this bends when the rubber is pressed on it. */
  slenderness: 4,
} as const;
