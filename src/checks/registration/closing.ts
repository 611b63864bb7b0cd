import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  makeFigure,
  type Series,
} from '../../findings/index.ts';
import { degreesPerRad } from '../../geometry/index.ts';
import { type Check, check, pegsOf, slackIn } from '../../mold/index.ts';
import { type FalseSeat, Pattern, type Peg } from '../../physics/index.ts';

interface ClosingInput {
  readonly pegs: readonly (Peg & { readonly id: string })[];
  readonly limit: number;
  readonly slack: number;
}

const source = 'bottleneck assignment of bosses to sockets over all turns about the axis, by critical angles';

/**
 * One way to close: turned by any angle about the disc's axis, some boss must stay well away from every socket that
 * it could enter. The nearest false seat must miss by more than the limit and more than the widest head's radius,
 * since a head that is less than its radius off slides in by itself.
 */
export const closing: Check = check<ClosingInput>({
  id: 'closing',
  title: 'One way to close',
  follows: false,
  processes: ['rubber', 'rigid', 'poured'],
  units: (mold) => {
    if (mold.bosses.length === 0 && mold.placements.length === 0) return [];
    return [
      {
        subject: 'mold',
        about: [],
        input: { pegs: pegsOf(mold), limit: mold.limits.falseSeat, slack: slackIn(mold) },
      },
    ];
  },
  run: ({ pegs, limit, slack }) => {
    if (pegs.length < 2) return { findings: [tooFew(pegs.length)] };
    const pattern = new Pattern(pegs, slack);
    const wanted = Math.max(limit, ...pegs.map(({ headRadius, corners }) => corners ?? headRadius));
    const seats = pattern.falseSeats(wanted);
    const nearest = seats.at(0);
    const within = seats.filter(({ misfit }) => misfit < wanted).length;
    return {
      findings: nearest && nearest.misfit < wanted ? [closesRotated(nearest, wanted)] : [],
      figures: [figure('registration.falseSeats', within), ...(nearest ? seatFigures(nearest) : [])],
      series: [
        ...misfitSeries(
          pattern,
          pegs.map(({ id }) => id),
          seats.map(({ angleRad }) => angleRad * degreesPerRad),
          wanted,
        ),
        ...(nearest ? [seatSeries(seats)] : []),
      ],
    };
  },
});

const tooFew = (count: number): Finding =>
  finding('registration.too-few', { subject: 'mold', values: { measured: count, limit: 2 } });

const closesRotated = ({ misfit, angleRad }: FalseSeat, wanted: number): Finding =>
  finding('registration.closes-turned', {
    subject: 'mold',
    values: { measured: misfit, limit: wanted, angle: angleRad * degreesPerRad },
  });

const figure = (name: FigureName, value: number): Figure =>
  makeFigure(name, { subject: 'mold', value, source, estimated: false });

const seatFigures = ({ misfit, angleRad }: FalseSeat): Figure[] => [
  figure('registration.falseSeat', misfit),
  figure('registration.falseSeatAngle', angleRad * degreesPerRad),
];

/** Every false seat found: where it is and what it misses by. */
const seatSeries = (seats: readonly FalseSeat[]): Series => ({
  name: 'registration.seats',
  subject: 'mold',
  x: { label: 'turned by', unit: 'deg', values: seats.map(({ angleRad }) => angleRad * degreesPerRad) },
  y: { label: 'misfit', unit: 'mm', values: seats.map(({ misfit }) => misfit) },
});

/** Near a least misfit the curve is looked at this finely, degrees. */
const fine = 0.1;

/** Whole degrees; about each least misfit every tenth; and the seats themselves. */
function anglesToLookAt(pattern: Pattern, seats: readonly number[]): number[] {
  const whole = Array.from({ length: 361 }, (_, i) => i);
  const misfits = whole.map((angle) => pattern.misfit(angle / degreesPerRad));
  const angles = new Set([...whole, ...seats]);
  for (let i = 0; i <= 360; i++) {
    const beside = Math.min(
      misfits[i - 1] ?? Number.POSITIVE_INFINITY,
      misfits[i + 1] ?? Number.POSITIVE_INFINITY,
    );
    if (misfits[i] > beside) continue;
    for (let k = -9; k <= 9; k++) {
      const angle = (10 * i + k) * fine;
      if (angle > 0 && angle < 360) angles.add(Math.round(angle * 10) / 10);
    }
  }
  return [...angles].sort((a, b) => a - b);
}

/** d over the whole turn, and how far each boss is there from the socket it is given. */
function misfitSeries(
  pattern: Pattern,
  ids: readonly string[],
  seats: readonly number[],
  wanted: number,
): Series[] {
  const angles = anglesToLookAt(pattern, seats);
  const offsets = angles.map((angle) => pattern.offsets(angle / degreesPerRad));
  const against = (name: string, subject: string, label: string, values: readonly number[]): Series => ({
    name,
    subject,
    x: { label: 'turned by', unit: 'deg', values: angles },
    y: { label, unit: 'mm', values },
  });
  return [
    {
      ...against(
        'registration.misfit',
        'mold',
        'misfit',
        offsets.map((off) => Math.max(...off)),
      ),
      limit: { value: wanted, says: 'wanted at every other seat' },
    },
    ...ids.map((id, boss) =>
      against(
        'registration.off',
        id,
        'off its socket',
        offsets.map((off) => off[boss]),
      ),
    ),
  ];
}
