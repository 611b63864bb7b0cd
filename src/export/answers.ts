import {
  causesByCode,
  type Figure,
  type FigureName,
  type Finding,
  type FindingCode,
  type Report,
} from '../findings/index.ts';
import type { Mold } from '../mold/index.ts';
import { holdingReserve, rigidUndercut } from '../tables/index.ts';
import { sayCause, showFigure, showQuantity } from '../wording/index.ts';
import { poursAndTime } from './pours-answer.ts';
import { stockThatHolds } from './stock-answer.ts';

/** What a person asks of a mold before it is made, answered from what the checks found. */
export interface Answer {
  readonly asks: string;
  /** `doubtful` where there are warnings but no stop; `not checked` where the plan leaves out what it takes. */
  readonly verdict: 'yes' | 'no' | 'doubtful' | 'not checked';
  /** The number that decides, and beside it what is wanted. */
  readonly says: string;
  /** What else the bench works by. */
  readonly besides?: string;
}

interface Question {
  readonly asks: string;
  /** Codes, or their beginnings, of the findings that bear on it. */
  readonly about: readonly string[];
  /** What decides where nothing is wrong; left out where the report has nothing about it. */
  readonly decides: (facts: Facts) => string | undefined;
  /** What is worth saying beside it either way. */
  readonly besides?: (facts: Facts) => string | undefined;
}

/** Mold and report, and how their numbers are shown. */
class Facts {
  constructor(
    readonly mold: Mold,
    readonly report: Report,
  ) {}

  all(...names: readonly FigureName[]): Figure[] {
    return this.report.figures.filter(({ name }) => names.includes(name));
  }

  one(name: FigureName): Figure | undefined {
    return this.report.figures.find((figure) => figure.name === name);
  }

  show(figure: Pick<Figure, 'value' | 'unit' | 'estimated' | 'word'>): string {
    return showFigure(figure, this.report.units);
  }

  /** A number of the plan in the unit of a figure. */
  wanted(value: number, unit: Figure['unit']): string {
    return showQuantity(value, unit, this.report.units);
  }
}

/** A share or a depth in mm that shows as 0. */
const shownAsNone = 5e-5;

const leastBy = <T>(all: readonly T[], by: (one: T) => number): T | undefined =>
  all.reduce<T | undefined>(
    (least, one) => (least === undefined || by(one) < by(least) ? one : least),
    undefined,
  );

const questions: readonly Question[] = [
  {
    asks: 'Thick enough?',
    about: ['cover.'],
    decides: (facts) => {
      const least = leastBy(facts.all('cover.lower', 'cover.upper'), ({ value }) => value);
      const { cover } = facts.mold.limits;
      return (
        least && `${facts.show(least)} of cover at ${least.subject}; ${facts.wanted(cover, 'mm')} wanted`
      );
    },
    besides: ({ mold, report }) => stockThatHolds(mold, report),
  },
  // The checks have figures of what is poured, none of what is printed: only what is wrong is told.
  {
    asks: 'Fixtures come out?',
    about: ['making.', 'bed.', 'jig.', 'plate.', 'cup.'],
    decides: () => undefined,
  },
  { asks: 'Walls thick enough?', about: ['walls.'], decides: thinnestWall },
  {
    asks: 'Closes one way only?',
    about: ['registration.closes-turned', 'registration.too-few'],
    decides: (facts) => {
      const misfit = facts.one('registration.falseSeat');
      const limit = facts.report.series.find(({ name }) => name === 'registration.misfit')?.limit;
      if (!misfit || !limit) return undefined;
      return `the nearest wrong way misses by ${facts.show(misfit)}; ${facts.wanted(limit.value, 'mm')} wanted`;
    },
  },
  {
    asks: 'Halves line up?',
    about: ['registration.mismatch', 'registration.no-flex'],
    decides: (facts) => {
      const step = leastBy(facts.all('registration.mismatch'), ({ value }) => -value);
      const { mismatch } = facts.mold.limits;
      return (
        step &&
        `a step of ${facts.show(step)} at most, at ${step.subject}; ${facts.wanted(mismatch, 'mm')} allowed`
      );
    },
  },
  { asks: 'Comes apart?', about: ['release.', 'mold.'], decides: undercutMost },
  {
    asks: 'Can fits and holds?',
    about: ['fit.', 'closing.', 'pack.'],
    decides: (facts) => {
      const [held, force] = [facts.one('closing.held'), facts.one('closing.force')];
      if (!held || !force) return undefined;
      return `held with ${facts.show(held)}; ${facts.wanted(holdingReserve * force.value, 'N')} wanted`;
    },
  },
  {
    asks: 'Runs in balance?',
    about: ['balance.'],
    decides: (facts) => {
      const [off, allowed] = [facts.one('balance.static'), facts.one('balance.permissible')];
      return off && `${facts.show(off)} out of balance${allowed ? `; ${facts.show(allowed)} allowed` : ''}`;
    },
  },
  { asks: 'Fills, stays shut?', about: ['shot.', 'spin.'], decides: speedInBand },
  {
    asks: 'Air gets out?',
    about: ['fill.'],
    decides: (facts) => {
      const most = leastBy(facts.all('fill.air'), ({ value }) => -value);
      return most && `${facts.show(most)} stay at most in one casting, in ${most.subject}`;
    },
  },
  {
    asks: 'Cures through?',
    about: ['cure.'],
    decides: (facts) => {
      const share = facts.one('cure.share');
      return (
        share && `the middle gathers ${facts.show(share)} of its t90; ${facts.wanted(1, 'ratio')} wanted`
      );
    },
  },
  {
    asks: 'Stands the heat?',
    about: ['heat.'],
    decides: nearestHeat,
    besides: ({ mold }) => (tellsPours(mold) ? undefined : untoldPours),
  },
  {
    asks: 'How many, how long?',
    about: ['setting.', 'pours.', 'order.', 'cost.'],
    decides: ({ report }) => poursAndTime(report),
    besides: (facts) => {
      const each = facts.one('cost.casting');
      return each && `${facts.show(each)} for each casting`;
    },
  },
];

/** What nothing else asks about: layout, masters, fixtures. */
const sound: Question = {
  asks: 'Sound to make?',
  about: [],
  decides: () => 'nothing stands against layout, masters and fixtures',
};

function thinnestWall(facts: Facts): string | undefined {
  const { limits, bosses } = facts.mold;
  const wantedAt = ({ name, subject }: Figure): number => {
    if (name === 'walls.boss') return limits.cavityToBoss;
    if (name === 'walls.well') return limits.cavityToWell;
    if (name !== 'walls.rim') return limits.wall;
    return bosses.some(({ id }) => id === subject) ? limits.bossToRim : limits.cavityToRim;
  };
  const walls = facts.report.figures.filter(({ name }) => name.startsWith('walls.'));
  const nearest = leastBy(walls, (wall) => wall.value / wantedAt(wall));
  if (!nearest) return undefined;
  const [one, other = 'rim'] = nearest.subject.split(' ');
  return `${facts.show(nearest)} from ${one} to ${other}; ${facts.wanted(wantedAt(nearest), 'mm')} wanted`;
}

/** Rubber bends out of a share of undercut, rigid halves out of hardly any. */
function undercutMost(facts: Facts): string | undefined {
  const rigid = facts.mold.process === 'rigid';
  const found = rigid
    ? facts.all('undercut.depth-lower', 'undercut.depth-upper')
    : facts.all('undercut.share');
  const most = leastBy(found, ({ value }) => -value);
  if (!most) return undefined;
  const allowed = rigid
    ? facts.wanted(rigidUndercut, 'mm')
    : facts.wanted(facts.mold.limits.undercutShare, 'ratio');
  if (most.value < shownAsNone) return `no undercut; ${allowed} allowed`;
  return `${facts.show(most)} ${rigid ? 'of undercut at' : 'undercut in'} ${most.subject}; ${allowed} allowed`;
}

function speedInBand(facts: Facts): string | undefined {
  const speed = facts.mold.bench.spin?.speedRpm;
  const [least, most] = [facts.one('speed.least'), facts.one('speed.most')];
  if (speed === undefined || (!least && !most)) return undefined;
  const band =
    least && most
      ? `${facts.show(least)} to ${facts.show(most)}`
      : least
        ? `at least ${facts.show(least)}`
        : most && `at most ${facts.show(most)}`;
  return `${facts.wanted(speed, 'rpm')}; ${band} wanted`;
}

/** Whichever comes nearest to the heat it is to stand: halves under metal, or what lies in the hot can. */
function nearestHeat(facts: Facts): string | undefined {
  const { alloy, cure } = facts.mold.bench;
  const met = [
    ...heatsOf(facts.all('heat.halfLimit'), alloy?.pourC, 'the halves stand', 'the metal'),
    ...heatsOf(facts.all('heat.limit'), cure?.temperatureC, '', 'the can'),
  ];
  const nearest = leastBy(met, ({ stands, heatC }) => stands.value - heatC);
  if (!nearest) return undefined;
  const { stands, heatC, who, what } = nearest;
  const said = who === '' ? `${stands.subject} stands` : who;
  return `${said} ${facts.show(stands)}; ${what} has ${facts.wanted(heatC, 'C')}`;
}

const heatsOf = (limits: readonly Figure[], heatC: number | undefined, who: string, what: string) =>
  heatC === undefined ? [] : limits.map((stands) => ({ stands, heatC, who, what }));

/** Rubber is poured again and again, and stores heat from pour to pour; without `pouring` nothing is found of that. */
const tellsPours = ({ process, placements, bench }: Mold): boolean =>
  process !== 'rubber' || placements.length === 0 || bench.pouring !== undefined;

const untoldPours = 'pours an hour: not checked, the plan does not say pouring';

const isAbout = ({ about }: Question, { code }: Finding): boolean =>
  about.some((one) => code.startsWith(one));

/** What is not found since the plan does not say something. */
const isLeftOut = ({ code }: Finding): boolean => code.endsWith('.not-checked') || code in soleEntry;

/** What the plan does not say where one entry is all it takes. */
const soleEntry: Readonly<Partial<Record<FindingCode, string>>> = {
  'registration.no-flex': 'registration.flex',
  'making.not-checked': 'fixture.process',
};

/** All that can be answered; a question the report has nothing about is not asked. */
export function answersOf(mold: Mold, report: Report): Answer[] {
  const facts = new Facts(mold, report);
  const others = report.findings.filter((one) => !questions.some((question) => isAbout(question, one)));
  const answers = questions.map((question) =>
    answer(
      question,
      report.findings.filter((one) => isAbout(question, one)),
      facts,
    ),
  );
  return [answer(sound, others, facts), ...answers].filter((one) => one !== undefined);
}

function answer(
  { asks, decides, besides }: Question,
  findings: readonly Finding[],
  facts: Facts,
): Answer | undefined {
  const more = besides?.(facts);
  const also = more === undefined ? {} : { besides: more };
  // What the plan makes less of is no less there.
  const open = findings.filter(({ severity, changed }) => severity !== 'note' || changed);
  if (open.length > 0) {
    const verdict = open.some(({ severity }) => severity === 'stop') ? 'no' : 'doubtful';
    return { asks, verdict, says: worstOf(open, facts.report), ...also };
  }
  const decided = decides(facts);
  const missing = findings.filter(isLeftOut);
  if (missing.length > 0) {
    const says = [...(decided === undefined ? [] : [decided]), needs(missing)].join('; ');
    return { asks, verdict: 'not checked', says, ...also };
  }
  return decided === undefined ? undefined : { asks, verdict: 'yes', says: decided, ...also };
}

/** The worst of them in words, and how much more there is. */
function worstOf(open: readonly Finding[], { units }: Report): string {
  const causes = causesByCode(open).flat();
  const { says, subjects } = sayCause(causes[0], units);
  const places = causes[0].findings.length;
  const more = causes.length - 1;
  return [
    says.replace(/\.$/, ''),
    ...(places > 1 ? [`${places} places: ${subjects}`] : []),
    ...(more > 0 ? [`${more} more below`] : []),
  ].join('; ');
}

/** The first thing the plan is to say, and how many more. */
function needs(missing: readonly Finding[]): string {
  const names = missing.flatMap(({ code, values }) => {
    const sole = soleEntry[code];
    if (sole !== undefined) return [sole];
    return Array.isArray(values.missing) ? values.missing.map(String) : [];
  });
  const [first, ...others] = [...new Set(names)];
  if (first === undefined) throw new Error('left out, but nothing is named');
  return `the plan does not say ${first}${others.length > 0 ? ` and ${others.length} more` : ''}`;
}
