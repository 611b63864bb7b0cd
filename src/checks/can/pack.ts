import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import {
  type BuildUpSpace,
  bossLumps,
  buildUpSpaces,
  buildUpVolume,
  type Check,
  check,
  type Memoize,
  type Mold,
  masterOf,
  soundSprue,
  sprueVolume,
  tabLumps,
} from '../../mold/index.ts';
import { canVolume, heatedVolume, lockPressure } from '../../physics/index.ts';
import { rubberBulkModulus, rubberKind } from '../../tables/index.ts';
import { leftOut } from '../from-mold/index.ts';

/** What is laid into the can, and how hot it becomes. */
export interface PackInput {
  readonly missing: readonly string[];
  /** Volumes in mm3. */
  readonly can: number;
  readonly rubber: number | { readonly share: number };
  readonly densityKgM3?: number;
  readonly solids: number;
  readonly buildUps: readonly BuildUpSpace[];
  /** Both ends of what is known of it; the plan's own is one figure. */
  readonly expansionPerK: { readonly least: number; readonly most: number };
  readonly kelvin: number;
  readonly spew?: 'open' | 'none' | undefined;
  readonly estimated: boolean;
}

const source =
  'rubber laid in, or else both halves as full discs, heated by its volume expansion; masters, bosses, sprue form, tabs and build-ups as they are; can that does not give';

/** Whether what is laid into the can finds room in it, cold and at the temperature of the cure. */
export const pack: Check = check<PackInput>({
  id: 'pack',
  title: 'What is packed into the can',
  follows: false,
  processes: ['rubber'],
  units: (mold) => (packs(mold) ? [{ subject: 'can', about: [], input: packInput(mold) }] : []),
  run: (input, { memoize }) => {
    const { missing, can, densityKgM3, estimated } = input;
    if (missing.length > 0)
      return { findings: [finding('pack.not-checked', { subject: 'can', values: { missing } })] };
    const { rubber, cold, excess, least } = excessOf(input, memoize);
    const lock = lockPressure(rubberBulkModulus.value, excess, rubber);
    const figure = (name: FigureName, value: number): Figure =>
      makeFigure(name, { subject: 'can', value, source, estimated });
    return {
      findings: judge(input, excess, least),
      figures: [
        figure('pack.can', can),
        ...(densityKgM3 === undefined ? [] : [figure('pack.laidIn', rubber * densityKgM3 * 1e-9)]),
        figure('pack.cold', cold),
        figure('pack.excess', excess),
        ...(excess > 0
          ? [
              makeFigure('pack.lock', {
                subject: 'can',
                value: lock,
                source: rubberBulkModulus.source.text,
                estimated: true,
              }),
            ]
          : []),
      ],
    };
  },
});

/** The rubber, all that is laid in cold, and what of it is too much for the can when hot, at most and at least, mm3. */
export function excessOf(input: PackInput, memoize: Memoize | undefined) {
  const { can, expansionPerK, kelvin, buildUps } = input;
  const solids = input.solids + buildUps.reduce((sum, space) => sum + buildUpVolume(space, memoize), 0);
  const rubber = laidIn(input, solids);
  const over = (perK: number): number => heatedVolume(rubber, perK, kelvin) + solids - can;
  return {
    rubber,
    cold: rubber + solids,
    excess: over(expansionPerK.most),
    least: over(expansionPerK.least),
  };
}

/** Volume of the rubber, mm3: by a share, of the room that all else leaves in the can. */
const laidIn = ({ rubber, can }: PackInput, solids: number): number =>
  typeof rubber === 'number' ? rubber : rubber.share * Math.max(0, can - solids);

/** A sprue form that cannot be made, or a cure that heats nothing, has a stop of its own: what came of it would be no figure. */
export function packs(mold: Mold): boolean {
  if (mold.placements.length === 0 || (mold.sprue && !soundSprue(mold))) return false;
  const { startC, temperatureC } = mold.bench.cure ?? {};
  return startC === undefined || temperatureC === undefined || startC < temperatureC;
}

export function packInput(mold: Mold): PackInput {
  const { disc, bench, placements } = mold;
  const { can, rubber, cure } = bench;
  const kind = rubber?.compound === undefined ? undefined : rubberKind(rubber.compound);
  const own = rubber?.expansionPerK;
  const listed = kind?.expansionPerK;
  const expansion =
    own === undefined
      ? listed && { least: listed.least.value, most: listed.most.value }
      : { least: own, most: own };
  const density = rubber?.densityKgM3 ?? kind?.densityKgM3?.value;
  const { laidInKg, laidInShare } = rubber ?? {};
  const missing = leftOut([
    ['can.diameter', can?.diameter],
    ['can.depth', can?.depth],
    ['rubber.expansion', expansion],
    ['rubber.density', laidInKg === undefined ? 0 : density],
    ['cure.temperature', cure?.temperatureC],
    ['cure.start', cure?.startC],
  ]);
  const full = Math.PI * disc.radius ** 2 * (disc.lower + disc.upper);
  const inMasters = placements.map(
    (placement) => masterOf(mold, placement).measures.volume * placement.scale ** 3,
  );
  const solids = [
    ...inMasters,
    ...[
      ...mold.bosses.flatMap(bossLumps),
      ...mold.tabs.flatMap((tab) => tabLumps(tab, disc.radius, mold.process)),
    ].map(({ volume }) => volume),
    mold.sprue ? sprueVolume(mold.sprue, disc.upper) : 0,
  ];
  return {
    missing,
    can: canVolume(can?.diameter ?? 0, (can?.depth ?? 0) - (can?.spacer ?? 0)),
    rubber:
      laidInShare !== undefined
        ? { share: laidInShare }
        : laidInKg !== undefined && density !== undefined
          ? (laidInKg / density) * 1e9
          : full,
    ...((laidInKg ?? laidInShare) !== undefined && density !== undefined && { densityKgM3: density }),
    solids: solids.reduce((sum, one) => sum + one, 0),
    buildUps: buildUpSpaces(mold),
    expansionPerK: expansion ?? { least: 0, most: 0 },
    kelvin: (cure?.temperatureC ?? 0) - (cure?.startC ?? 0),
    spew: can?.spew,
    estimated: rubber?.expansionPerK === undefined || placements.some((one) => one.estimated),
  };
}

/** Rubber that swells most is too much for the can; rubber that swells least may leave it empty. Both may be said. */
function judge({ spew }: PackInput, most: number, least: number): Finding[] {
  const subject = 'can';
  const values = { measured: most, limit: 0 };
  const short =
    least < 0
      ? [finding('pack.short', { subject, values: { measured: least, limit: 0, empty: -least } })]
      : [];
  if (most <= 0) return short;
  const over = spew === 'none' ? 'pack.locked' : spew === 'open' ? 'pack.flows-out' : 'pack.way-out';
  return [finding(over, { subject, values }), ...short];
}
