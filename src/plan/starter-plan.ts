import { stringify } from 'yaml';
import { inchFraction, mmPerInch } from '../geometry/index.ts';
import { sprueDefaults } from './defaults.ts';
import type { PlanValue } from './schema.ts';
import { pieceSections, type StarterPiece } from './starter-pieces.ts';

export interface StarterOptions {
  /** Diameter of the disc, mm. */
  readonly diameter: number;
  readonly process: PlanValue['process'];
  /** Unit the plan is written in. */
  readonly unit: 'mm' | 'in';
  /** One line; `New disc` where nobody gave one. */
  readonly title?: string | undefined;
  /** Of each half, mm; left out, as usual for the disc. */
  readonly halfThickness?: number | undefined;
  /** Masters to begin with; without any, examples stand in their place. */
  readonly pieces?: readonly StarterPiece[];
}

/**
 * Text of a plan to start from: a sprue form and unequal bosses near the rim, in usual sizes for the disc, with
 * masters and placements as examples. It reads without a finding, and so it does with its examples put in force: a
 * line that begins with `#` and no blank behind it, or more than one, is an example.
 */
export function starterPlan({
  diameter,
  process,
  unit,
  title = 'New disc',
  halfThickness,
  pieces = [],
}: StarterOptions): string {
  const write = unit === 'mm' ? millimeters : inches;
  const sections = [
    head(process, unit, title, pieces.length === 0),
    disc(diameter, halfThickness ?? usualHalf(diameter), unit, write),
    sprue(diameter, write),
    registration(diameter, process, unit, write),
    rim(diameter, write),
    ...(pieces.length > 0 ? pieceSections(pieces, process, write) : [examples(diameter, write)]),
    making(process, write),
  ];
  return sections
    .map((section) => section.trim())
    .join('\n\n')
    .concat('\n');
}

type Write = (mm: number) => string;

/** To the nearest half millimeter (tenth, under 3 mm). */
const millimeters: Write = (mm) => String(mm < 3 ? Math.round(mm * 10) / 10 : Math.round(mm * 2) / 2);

const sixteenth = mmPerInch / 16;

/** To the nearest sixteenth of an inch (sixty-fourth, under 1/8 in), as a reduced fraction. */
const inches: Write = (mm) => `${inchFraction(mm, mm < mmPerInch / 8 ? 64 : 16)} in`;

const processNotes: Record<PlanValue['process'], string> = {
  rubber: 'raw rubber, pressed and cured round the masters',
  rigid: 'printed or machined test halves',
  poured: 'pattern plates that silicone or resin is poured on',
};

const head = (
  process: PlanValue['process'],
  unit: 'mm' | 'in',
  title: string,
  hasExamples: boolean,
): string => `
# A plan for discwright. A bare number means mm, degrees, rpm, C or minutes, as the field says; other units are
# written out: 9 in, 3/8 in, 320 F, 2 h${unit === 'in' ? '. This plan is written in inches' : ''}.
# Lines ${hasExamples ? 'like those under "masters" that' : 'that'} begin with # and no word right behind it are examples: take the # away.

title: ${stringify(title, { lineWidth: 0 }).trim()}
revision: 1
paper: ${unit === 'in' ? 'Letter' : 'A4'}
# rubber, rigid or poured; here: ${processNotes[process]}.
process: ${process}
`;

/** Usual thickness of a half: 1/2 in up to a 7 in disc, 3/4 in beyond; common practice, no published source. */
export const usualHalf = (diameter: number): number => (diameter <= 180 ? 12.7 : 19.05);

/** The diameter asked for is never rounded to a usual size. */
function exactly(mm: number, unit: 'mm' | 'in'): string {
  if (unit === 'mm') return String(Number(mm.toFixed(3)));
  const sixteenths = mm / sixteenth;
  const fits = Math.abs(sixteenths - Math.round(sixteenths)) < 1e-6;
  return fits ? inches(mm) : `${Number((mm / mmPerInch).toFixed(4))} in`;
}

const disc = (diameter: number, half: number, unit: 'mm' | 'in', write: Write): string => `
disc:
  diameter: ${exactly(diameter, unit)}
  # Of each half. Give lower and upper instead where they differ.
  thickness: ${write(half)}
  rimChamfer: ${write(1)}
`;

/** A size as a share of the disc's diameter, to a tenth of a percent. */
const shareOf =
  (diameter: number): Write =>
  (mm) =>
    `${Number(((100 * mm) / diameter).toFixed(1))} %`;

function sprue(diameter: number, write: Write): string {
  const usual = sprueDefaults(diameter);
  const share = shareOf(diameter);
  return `
# The center sprue form: a shaft through the upper half, a well in the lower half, a dome that turns the stream.
# Shares of the disc's diameter, so that they follow it; lengths may stand there too. Here they are
# hole ${write(usual.holeDiameter)}, well ${write(usual.wellDiameter)} by ${write(usual.wellDepth)}, dome ${write(usual.domeDiameter)} by ${write(usual.domeHeight)}.
sprue:
  hole: ${share(usual.holeDiameter)}
  draft: 3
  well: { diameter: ${share(usual.wellDiameter)}, depth: ${share(usual.wellDepth)} }
  dome: { diameter: ${share(usual.domeDiameter)}, height: ${share(usual.domeHeight)} }
  fillet: ${write(usual.fillet)}
  grip: ${write(usual.grip)}
`;
}

/** A rigid socket's mouth is no more than this wider all round than its boss, clearance and lead-in, mm. */
const socketWider = 1;

/**
 * Two sizes of boss that suit the disc, the larger first. Cap nuts as in DIN 1587 and SAE J483; `reach` is half the
 * larger hexagon across its corners, or the larger dome's radius and what a rigid socket is wider, mm.
 */
function bossSizes(diameter: number, process: PlanValue['process'], unit: 'mm' | 'in', write: Write) {
  if (process !== 'rubber') {
    const large = Math.min(20, Math.max(8, Math.round(diameter * 0.06)));
    const wider = process === 'rigid' ? socketWider : 0;
    return { kind: 'dome', sizes: [write(large), write(0.8 * large)], reach: large / 2 + wider };
  }
  const kind = 'cap nut';
  if (unit === 'in') {
    return diameter < 200
      ? { kind, sizes: ['5/16', '1/4'], reach: 7.4 }
      : { kind, sizes: ['3/8', '5/16'], reach: 8.3 };
  }
  if (diameter < 120) return { kind, sizes: ['M5', 'M4'], reach: 4.7 };
  if (diameter < 200) return { kind, sizes: ['M6', 'M5'], reach: 5.8 };
  return diameter < 280
    ? { kind, sizes: ['M10', 'M8'], reach: 9.3 }
    : { kind, sizes: ['M12', 'M10'], reach: 10.4 };
}

const printed = `
# Without nuts: kind hexagon, dome or cone, by its width, is printed, with a cup to try the fit.`;

const flex = (
  unit: 'mm' | 'in',
): string => `  # How far the cured rubber lets a boss move sideways: an estimate, the play is computed from it.
  flex: ${unit === 'in' ? '0.004 in' : '0.1 mm'}
`;

function registration(
  diameter: number,
  process: PlanValue['process'],
  unit: 'mm' | 'in',
  write: Write,
): string {
  const { kind, sizes, reach } = bossSizes(diameter, process, unit, write);
  // At least 6 mm of rubber between boss and rim; common practice, no published source.
  const fromRim = write(
    unit === 'in' ? Math.ceil((reach + 6) / sixteenth) * sixteenth : Math.ceil(reach + 6),
  );
  // These angles leave every wrong position at least 25 degrees of misfit at one boss or more.
  const rows = [
    [0, sizes[0]],
    [100, sizes[1]],
    [190, sizes[0]],
    [250, sizes[1]],
  ] as const;
  const bosses = rows.map(
    ([angle, size]) =>
      `    - { kind: ${kind}, size: ${size}, at: { radius: { fromRim: ${fromRim} }, angle: ${angle} } }`,
  );
  const play = process === 'rigid' ? `  clearance: ${write(0.3)}\n` : flex(unit);
  return `
# Unequal bosses at unequal angles near the rim, so that the halves close in one position only.${process === 'rubber' ? printed : ''}
registration:
${play}  bosses:
${bosses.join('\n')}
`;
}

const rim = (diameter: number, write: Write): string => `
# A tab in the parting line where the cured halves are pried apart, and a notch across both halves as a witness.
tabs:
  - { angle: 145, width: ${shareOf(diameter)(Math.min(20, 0.12 * diameter))}, length: ${shareOf(diameter)(Math.min(8, 0.08 * diameter))}, height: ${write(3)}, inset: ${write(1)} }
notches:
  - { angle: 45, width: ${write(5)}, depth: ${write(3)} }
`;

function examples(diameter: number, write: Write): string {
  return `
# The masters, each under a name of yours: a mesh file beside this plan, or a stand-in where there is no mesh.
#masters:
#  ivy: { file: masters/ivy.stl }
#  beetle: { file: masters/beetle.stl, lie: { turnX: 180 } }
#  button: { length: ${write(0.07 * diameter)}, width: ${write(0.07 * diameter)}, above: ${write(3)}, below: ${write(1)} }

# Where they lie. A radius is a length, a share of the disc radius, or a distance from the rim.
# Sink: how much lies below the parting plane; silhouette puts the widest contour there.
#placements:
#  - { master: ivy, at: { radius: 60 %, angle: 20 }, turn: 90, sink: silhouette }
#  - { master: beetle, at: { radius: { fromRim: ${write(0.2 * diameter)} }, angle: 80 }, sink: 50 % }
#  - { master: button, ring: { count: 3, radius: 60 %, start: 140 }, sink: ${write(1)} }

# Build-ups under thin parts, and channels for metal and air.
#supports: auto
#gates: straight
#vents: straight
`;
}

/** Common practice, no published source. */
const hotCan = `
# What lies in the hot can (sprue form, tab, bosses, build-ups) must be of metal: no common print stands the cure. Buy
# it, machine it, or get it from a print, in this order: print it larger by the shrink of the metal, mold the print in
# silicone that cures cold, cast it in a metal that melts well above the cure, dress it to size, try it in the cold can.`;

function making(process: PlanValue['process'], write: Write): string {
  const relieve =
    process === 'rigid' ? '  # Fill undercuts so that a rigid casting can leave.\n  relieve: true\n' : '';
  const shrink =
    process === 'rubber' || process === 'poured'
      ? '\n# Shares of length; ask the makers of your alloy and rubber.\n#shrink: { alloy: 0.5 %, rubber: 1 % }'
      : '\n# Share of length; ask the maker of your alloy.\n#shrink: { alloy: 0.5 % }';
  return `
# How the fixtures are made.${process === 'rubber' ? hotCan : ''}
fixture:
  material: ${process === 'rubber' ? 'aluminum' : 'PLA'}
  clearance: ${write(0.3)}
${relieve}${shrink}
`;
}
