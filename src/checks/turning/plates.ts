import { finding, makeFigure } from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';

/** Radii in mm. */
interface PlatesInput {
  readonly plate: number;
  readonly disc: number;
  /** Of the circle round all cavities. */
  readonly metal: number;
}

/** The pressing plate against the disc it backs, and the metal in it. */
export const plates: Check = check<PlatesInput>({
  id: 'plates',
  title: 'Pressing plates',
  follows: false,
  processes: ['rubber', 'rigid'],
  units: ({ bench: { machine }, disc, placements }) => {
    if (machine?.plateDiameter === undefined || placements.length === 0) return [];
    const metal = Math.max(...placements.map(({ x, y, reach }) => Math.hypot(x, y) + reach));
    const input = { plate: machine.plateDiameter / 2, disc: disc.radius, metal };
    return [{ subject: 'machine', about: [], input }];
  },
  run: ({ plate, disc, metal }) => {
    const subject = 'machine';
    const beyond = makeFigure('spin.plate', {
      subject,
      value: plate - metal,
      source: 'radius of the pressing plate less that of the circle round all cavities',
      estimated: false,
    });
    // A hair less keeps out what conversion of units leaves.
    if (plate >= disc - 1e-6) return { figures: [beyond] };
    const [code, limit] =
      plate < metal ? (['spin.plate-small', metal] as const) : (['spin.overhang', disc] as const);
    const values = { measured: 2 * plate, limit: 2 * limit };
    return { figures: [beyond], findings: [finding(code, { subject, values })] };
  },
});
