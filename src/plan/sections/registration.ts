import { z } from 'zod';
import { accepts, angle, complain, id, length, readInto, renamed, word } from './fields.ts';
import { leastDisc, position, ring } from './placements.ts';

const tradeSize = /^(M\d{1,2}|(\d[ -])?\d{1,2}\/\d{1,2}(\s?(in|"))?|\d(\s?(in|")))$/i;

/** A hexagon's thread; a fraction with a unit is a width. */
const nutSize = /^(M\d{1,2}|\d{1,2}\/\d{1,2})$/i;
/** Smaller bosses hold nothing; a fraction of an inch without its unit is so found out, mm. */
const across = { from: 1, to: 100 };

const boss = z
  .strictObject({
    id: id('Name of the boss; without it, bosses are numbered.').optional(),
    kind: word('What stands in the parting plane: a cap nut, a dome, a cone or a hexagon.', [
      'cap nut',
      'dome',
      'cone',
      'hexagon',
    ]),
    size: z
      .union([z.number(), z.string()])
      .describe(
        `Of a cap nut the thread, such as \`M8\` or \`3/8\`; of a dome or cone the diameter at the parting plane; of a hexagon the width across flats there, or the thread of a nut as wide, such as \`M8\` or \`3/8\` (ISO 4032, ASME B18.2.2). ${accepts('length')}`,
      ),
    leastDisc: leastDisc.optional(),
    at: position.optional(),
    ring: ring.optional(),
    turn: angle('Turn about its own vertical.').optional(),
    height: length('Height of a dome, cone or hexagon above the parting plane.', {
      over: 0,
      to: 100,
    }).optional(),
    depth: length('Depth of the root of a dome, cone or hexagon below the parting plane.', {
      over: 0,
      to: 100,
    }).optional(),
    draft: angle("Lean of a hexagon's flats above the parting plane, from upright.", {
      from: 0,
      to: Math.PI / 4,
    }).optional(),
    clearance: length('Clearance all round the socket of this boss, in rigid halves.', {
      from: 0,
      to: 5,
    }).optional(),
  })
  .transform(({ kind, size, height, depth, draft, at, ring, ...rest }, context) => {
    if ((at === undefined) === (ring === undefined)) {
      if (at === undefined) complain(context, 'plan.missing', { which: 'boss place' });
      else complain(context, 'plan.choose-one', { which: 'place', names: ['`at`', '`ring`'] }, ['ring']);
      return z.NEVER;
    }
    const where = at ? { position: at } : ring ? { ring } : z.NEVER;
    const placed = { ...renamed(rest, { turn: 'turnRad' }), where };
    if (kind === 'cap nut') {
      for (const [key, value] of Object.entries({ height, depth })) {
        if (value === undefined) continue;
        complain(context, 'plan.choose-one', { which: 'cap nut', name: key }, [key]);
      }
      onlyOfHexagons(draft, context);
      return { ...placed, kind, size: readTradeSize(size, context) };
    }
    if (kind === 'hexagon') {
      const thread = typeof size === 'string' && nutSize.test(size.trim());
      const width = thread
        ? { thread: String(size).trim().toUpperCase() }
        : { flats: readInto(context, size, 'length', across, ['size']) ?? z.NEVER };
      return { ...placed, kind, across: width, height, depth, draftRad: draft };
    }
    onlyOfHexagons(draft, context);
    const diameter = readInto(context, size, 'length', across, ['size']) ?? z.NEVER;
    return { ...placed, kind, diameter, height, depth };
  })
  .describe('One registration boss: it stands in the lower half and leaves its socket in the upper.');

function onlyOfHexagons(draft: number | undefined, context: z.core.$RefinementCtx): void {
  if (draft === undefined) return;
  complain(context, 'plan.choose-one', { which: 'hexagon' }, ['draft']);
}

/** The thread as the table of cap nuts knows it: `M8`, `3/8`. */
function readTradeSize(size: number | string, context: z.core.$RefinementCtx): string {
  const text = String(size).trim();
  if (typeof size === 'string' && tradeSize.test(text)) return text.toUpperCase().replace(/\s?(IN|")$/, '');
  complain(context, 'plan.quantity', { which: 'cap nut', given: text.slice(0, 40) }, ['size']);
  return z.NEVER;
}

export const registration = z
  .strictObject({
    bosses: z.array(boss).max(60).optional().describe('The bosses that make the halves close one way.'),
    clearance: length('Clearance all round the sockets of rigid halves.', { from: 0, to: 5 }).optional(),
    draft: angle(
      'Least lean of the walls of sockets in rigid halves, from upright. Usual by the process of the fixtures: FDM 2, SLA 1, machined 1; 1 where none is named.',
      { from: 0, to: Math.PI / 6 },
    ).optional(),
    flex: length('How far cured rubber lets a boss move sideways; play is computed from it.', {
      from: 0,
      to: 5,
    }).optional(),
  })
  .describe('What makes the two halves close in one position only.');
