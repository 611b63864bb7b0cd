import { z } from 'zod';
import { severities } from '../../findings/index.ts';
import { kinds } from '../../kinds/index.ts';
import { angle, complain, length, line, readInto, share, word } from './fields.ts';

const bed = { over: 0, to: 5000 };
const limit = { from: 0, to: 500 };
/** Engraving is 0.6 mm deep. */
const plateBounds = { from: 1.5, to: 50 };

const kindIds = kinds.map(({ id }) => id);

/** `220x220`, `220 x 220 x 250`, `8 x 8 in`: a unit at the end is that of all. */
function readBed(written: string, context: z.core.$RefinementCtx) {
  const parts = written.split(/\s*[x×*]\s*/i);
  const unit = /[^\d.\s/]+$/.exec(written.trim())?.[0] ?? '';
  const read = (part: string): number =>
    readInto(context, /[^\d.\s/]/.test(part) || unit === '' ? part : `${part} ${unit}`, 'length', bed) ??
    z.NEVER;
  if (parts.length < 2 || parts.length > 3) {
    const accepted = '220x220, 220 x 220 x 250, 8 x 8 in';
    complain(context, 'plan.quantity', {
      which: 'quantity',
      given: written.slice(0, 40),
      noun: 'the sides of a bed',
      accepted,
    });
    return z.NEVER;
  }
  const [x, y, height] = parts.map(read);
  return { x, y, ...(height !== undefined && { z: height }) };
}

const bedSize = z
  .union([
    z.strictObject({
      x: length('Width of the printer or machine bed.', bed),
      y: length('Depth of the bed.', bed),
      z: length('Height over the bed; left out, no height is judged.', bed).optional(),
      margin: length('Left free along the edges of the bed.', { from: 0, to: 100 }).optional(),
    }),
    z
      .string()
      .transform((written, context): { x: number; y: number; z?: number; margin?: number } =>
        readBed(written, context),
      ),
  ])
  .describe(
    'The largest piece that can be made: its sides by name, or a text such as `220x220` or `220 x 220 x 250`.',
  );

export const fixture = z
  .strictObject({
    material: line('What the fixtures are made of, such as PLA, PETG, ABS, resin, aluminum.', 60).optional(),
    clearance: length('Gap left round loose build-ups.', { from: 0, to: 10 }).optional(),
    chordError: length('How far a flat between two corners of a round thing may stay off the true round.', {
      from: 0.001,
      to: 1,
    }).optional(),
    relieve: z
      .boolean()
      .optional()
      .describe('Rigid halves: fill undercuts toward the parting surface so that a rigid casting can leave.'),
    process: word(
      'How fixtures are made: FDM lays filament, SLA cures resin, machined is milled or turned.',
      ['FDM', 'SLA', 'machined'],
    ).optional(),
    jointClearance: length('Gap on each side of the joints of a fixture that is split to fit the bed.', {
      from: 0,
      to: 2,
    }).optional(),
    overhang: angle('Steepest overhang that needs nothing under it, from upright.', {
      from: 0,
      to: Math.PI / 2,
    }).optional(),
    leastFeature: length('Thinnest wall that comes out whole.', { over: 0, to: 20 }).optional(),
    compensation: share("The making process's own shrink, made up for in every fixture.", {
      from: -0.1,
      to: 0.1,
    }).optional(),
    holeCompensation: length(
      'How much wider across the puller hole, the openings of jig, plates and stencils, the cups of loose bosses and the sockets and pockets of rigid halves are drawn, since holes come out tight. Usual by the process: FDM 0.2, SLA 0.1, machined 0; none where no process is named.',
      { from: 0, to: 2 },
    ).optional(),
    footChamfer: length(
      'Chamfer of the edges that flat fixtures stand on while they are printed, so that the spread of the first layers does no harm; at most half the thickness. Usual by the process: FDM 0.4, SLA 0.3, machined 0; none where no process is named.',
      { from: 0, to: 5 },
    ).optional(),
    make: z
      .array(word('A kind of solid.', kindIds))
      .optional()
      .describe(`Which kinds of solids are made: a list of ${kindIds.join(', ')}. Left out, all.`),
    jig: z
      .strictObject({
        width: length('Width of its ring. Left out, so wide that 5 mm stay inside of the innermost boss.', {
          over: 0,
          to: 500,
        }).optional(),
        thickness: length(
          'Thickness. Left out, that of the hexagons, at least 4 mm.',
          plateBounds,
        ).optional(),
      })
      .optional()
      .describe('The registration jig.'),
    plate: z
      .strictObject({ thickness: length('Thickness. Left out, 3 mm.', plateBounds).optional() })
      .optional()
      .describe('The layout plate and the nests of the build-ups.'),
    cutter: z
      .strictObject({
        diameter: length('Diameter of the end mill.', { over: 0, to: 50 }),
        kind: word('Shape of its end.', ['flat', 'ball']),
      })
      .optional()
      .describe('Rigid halves: the smallest end mill they are machined with; where it cannot reach is told.'),
    bed: bedSize.optional(),
  })
  .describe('How the fixtures are printed or machined.');

export const shrink = z
  .strictObject({
    alloy: share('How much smaller a casting is than its cavity.', { from: 0, to: 0.1 }).optional(),
    rubber: share('How much smaller a cured cavity is than its master.', { from: -0.05, to: 0.1 }).optional(),
  })
  .describe('Shrink allowances, as shares of length; the two compound.');

export const limits = z
  .strictObject({
    cover: length('Least rubber between a cavity and an outer face.', limit).optional(),
    wall: length('Least wall between two cavities.', limit).optional(),
    web: length('Least rubber left between two channels that run side by side.', limit).optional(),
    cavityToWell: length('Least distance of a cavity from the well.', limit).optional(),
    cavityToBoss: length('Least distance of a cavity from a boss.', limit).optional(),
    cavityToRim: length('Least distance of a cavity from the rim.', limit).optional(),
    bossToRim: length('Least distance of a boss from the rim.', limit).optional(),
    falseSeat: length('Least misfit of the halves in every wrong position.', limit).optional(),
    mismatch: length('Greatest mismatch of the halves at a cavity.', { over: 0, to: 10 }).optional(),
    undercut: share('Greatest undercut that rubber is trusted to bend out of, of the volume of the cavity.', {
      from: 0,
      to: 1,
    }).optional(),
    slenderness: z
      .number()
      .min(0.5)
      .max(100)
      .optional()
      .describe('Greatest free length of a bit with nothing under it, in thicknesses. Range: 0.5 to 100.'),
    coarsening: length(
      'How far the surface of a master may be moved to make it of fewer triangles, where those of all placements take more memory than there is; 0 for not at all. Left out, 0.02 mm.',
      { from: 0, to: 1 },
    ).optional(),
  })
  .describe('Least distances the checks hold the mold to, and how coarse a master may be made.');

export const severity = z
  .record(
    z.string(),
    z.strictObject({
      severity: z.enum(severities).describe('stop, warn or note.'),
      reason: line('Why; shown with the finding.', 400),
    }),
  )
  .describe(
    'Codes of findings that this plan takes more or less seriously, each with a reason. Stops that protect people cannot be lowered.',
  );
