import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';
import { chvorinovTime, settingTime } from '../../physics/index.ts';
import { leftOut } from '../from-mold/index.ts';
import {
  asksOfPours,
  type CastingInput,
  castingInput,
  castingsOf,
  chillAt,
  solidAfter,
  wellTime,
} from './casting-input.ts';

const byRule =
  "Chvorinov's rule, its constant from heat conducted into a thick half: t = pi / 4 (rho H (V / A) / (e (Ts - T0)))^2 (Flemings; Poirier and Geiger, ch. 10)";
const byFront =
  'front of set metal on a half, both conducting (Carslaw and Jaeger, sec. 11.2), as a plate as thick as the largest ball inside; superheat as latent heat';

/** How long until castings and the metal in the well have set, in halves as warm as at the first pour. */
export const setting: Check = check<CastingInput>({
  id: 'setting',
  title: 'Setting of the metal',
  follows: false,
  processes: ['rubber', 'rigid', 'poured'],
  units: (mold) => (asksOfPours(mold) ? [{ subject: 'pouring', about: [], input: castingInput(mold) }] : []),
  run: (input, { memoize }) => {
    const { pouring, estimated } = input;
    const missing = [...leftOut([['pouring.halves', pouring.halvesC]]), ...input.missing];
    const castings = castingsOf(input, memoize);
    if (!castings || pouring.halvesC === undefined) return { findings: [notChecked('time', missing)] };
    const chill = chillAt({ ...input, half: castings.half }, pouring.halvesC);
    const { metal, spots, well } = castings;
    const figure = (name: FigureName, value: number, source: string, subject = 'pouring'): Figure =>
      makeFigure(name, { subject, value, source, estimated });
    const open = solidAfter(input, castings, pouring.halvesC);
    const all: Figure[] = [
      ...spots.flatMap((spot) => [
        figure('setting.thickest', 2 * spot.half, 'largest ball inside', spot.id),
        figure('setting.chvorinov', chvorinovTime(metal, spot.modulus, chill), byRule, spot.id),
        figure('setting.time', settingTime(metal, spot.half, chill), byFront, spot.id),
      ]),
      ...(well === undefined
        ? []
        : [
            figure(
              'setting.well',
              wellTime(metal, well, chill),
              `${byRule}; cooled at floor and wall of the well`,
            ),
          ]),
      figure('setting.open', open, 'the longest of all that sets'),
    ];
    const figures = all.filter(({ value }) => Number.isFinite(value));
    return { figures, findings: [...blanks(input, well), ...early(input, open)] };
  },
});

const notChecked = (which: 'time' | 'well' | 'contact', missing: readonly string[]): Finding =>
  finding('setting.not-checked', { subject: 'pouring', values: { which, missing } });

/** What is counted without: the metal in the well, and a contact that is not perfect, which only a rigid half feels. */
function blanks({ rigid, pouring, shot }: CastingInput, well: number | undefined): Finding[] {
  const ofWell = shot.missing.filter((name) => ['sprue', 'spin.speed', 'spin.shot'].includes(name));
  return [
    ...(well === undefined ? [notChecked('well', ofWell)] : []),
    ...(rigid && pouring.contactWM2K === undefined ? [notChecked('contact', ['pouring.contact'])] : []),
  ];
}

function early({ pouring: { openAfterS: measured, halvesC } }: CastingInput, limit: number): Finding[] {
  if (halvesC === undefined || measured === undefined || measured >= limit) return [];
  const values = Number.isFinite(limit)
    ? ({ which: 'early', measured, limit, halves: halvesC } as const)
    : ({ which: 'never', measured, halves: halvesC } as const);
  return [finding('setting.opened-early', { subject: 'pouring', values })];
}
