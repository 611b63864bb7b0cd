import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  type Judged,
  makeFigure,
} from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';
import { angleOf, sizeOf, type Unbalance } from '../../physics/index.ts';
import { type BalanceInput, balanceInput, type Unknown } from './balance-input.ts';
import { allowedFor, heldOf, type State, statesOf, trueTo } from './balance-states.ts';
import { bestSwap } from './best-swap.ts';

const bySums = 'sum of m r over metal against the half it displaces, nuts, tabs, notches and channels';
const byStandard = 'ISO 21940-11:2016 (formerly ISO 1940-1)';

/** How far the mold is out of balance: full, empty as it spins up, and with the worst cavity left empty. */
export const balance: Check = check<BalanceInput>({
  id: 'balance',
  title: 'Balance',
  follows: false,
  processes: ['rubber', 'rigid'],
  units: (mold) =>
    mold.placements.length > 0 ? [{ subject: 'mold', about: [], input: balanceInput(mold) }] : [],
  run: (input) => {
    const note = notChecked(input.unknown);
    if (input.placed.length === 0) return { findings: note };
    const judged = judge(input);
    return { findings: [...note, ...judged.findings], figures: judged.figures };
  },
});

function notChecked({ masses, materials: material, limit, part }: Unknown): Finding[] {
  const subject = 'mold';
  if (masses.length + material.length > 0) {
    const held = [...limit, ...part];
    return [
      finding('balance.not-checked', {
        subject,
        values: { which: 'nothing', missing: masses, material, held },
      }),
    ];
  }
  if (limit.length > 0) {
    const missing = [...limit, ...part];
    return [finding('balance.not-checked', { subject, values: { which: 'grade', missing } })];
  }
  if (part.length === 0) return [];
  return [finding('balance.not-checked', { subject, values: { which: 'part', missing: part } })];
}

function judge(input: BalanceInput): Judged {
  const figure = (name: FigureName, value: number, source: string, subject = 'mold'): Figure =>
    makeFigure(name, { subject, value, source, estimated: input.estimated });
  const { full, empty, misrun } = statesOf(input);
  const figures = [
    figure('balance.static', sizeOf(full.all), bySums),
    figure('balance.angle', angleOf(full.all), bySums),
    figure('balance.lower', sizeOf(full.lower), `${bySums}, shared by the lever rule`),
    figure('balance.upper', sizeOf(full.upper), `${bySums}, shared by the lever rule`),
    figure('balance.empty', sizeOf(empty.all), `${bySums}; no metal in it`),
    figure(
      'balance.misrun',
      sizeOf(misrun.all),
      `${bySums}, the metal of one cavity left out`,
      misrun.subject,
    ),
    figure('balance.correction', sizeOf(full.all) / input.radius, 'unbalance over the radius of the rim'),
  ];
  if (full.added > 0)
    figures.push(
      figure('balance.added', full.added, 'plates as the plan gives them, plus mass times distance off'),
    );
  const findings = againstMachine(input, [full, empty], misrun);
  const { speedRpm: speed, grade } = input;
  if (full.rotor) figures.push(figure('balance.rotor', full.rotor.massKg, 'halves, metal, nuts and plates'));
  if (full.rotor && speed !== undefined && grade !== undefined) {
    figures.push(figure('balance.permissible', allowedFor(grade, full.rotor.massKg, speed), byStandard));
    const plates =
      input.platesGmm === undefined ? '; own unbalance of the plates not known and not counted' : '';
    figures.push(
      figure(
        'balance.true',
        trueTo(input, [full, empty], grade, speed),
        `what ${byStandard} leaves over, by the mass of the mold${plates}`,
      ),
    );
    findings.push(...overGrade(input, { grade, speed }, { full, empty, misrun }));
  }
  return { findings, figures };
}

const withAdded = ({ all, added }: State): number => sizeOf(all) + added;

function againstMachine(
  { machineGmm: limit }: BalanceInput,
  states: readonly State[],
  misrun: State,
): Finding[] {
  if (limit === undefined) return [];
  const worst = states.reduce((a, b) => (withAdded(b) > withAdded(a) ? b : a));
  const measured = withAdded(worst);
  if (measured > limit) {
    const { filling } = worst;
    return [finding('balance.machine', { subject: 'mold', values: { measured, limit, filling } })];
  }
  if (withAdded(misrun) <= limit) return [];
  const values = { measured: withAdded(misrun), limit };
  return [finding('balance.misrun', { subject: misrun.subject, values })];
}

/** The grade and the speed it is taken at. */
interface Graded {
  readonly grade: string;
  readonly speed: number;
}

/** Full and empty each; a misrun only where both are within their grade. */
function overGrade(
  input: BalanceInput,
  graded: Graded,
  { full, empty, misrun }: ReturnType<typeof statesOf>,
): Finding[] {
  const found = [full, empty].flatMap((state) => overIn(input, graded, state));
  const limit = allowedFor(graded.grade, misrun.rotor?.massKg ?? 0, graded.speed);
  const { subject, added } = misrun;
  const measured = withAdded(misrun);
  if (found.length > 0 || measured <= limit) return found;
  const values = { measured, limit, ...graded, ...(added > 0 && { added }) };
  return [finding('balance.misrun-grade', { subject, values })];
}

function overIn(input: BalanceInput, graded: Graded, state: State): Finding[] {
  const { filling, subject, added, rotor } = state;
  const allowed = allowedFor(graded.grade, rotor?.massKg ?? 0, graded.speed);
  const [whole, ...faces] = heldOf(state, input).map(({ which, own, share }) => ({
    which,
    measured: own + share * added,
    limit: share * allowed,
  }));
  const more = { ...graded, filling, ...(added > 0 && { added }) };
  const { measured, limit } = whole;
  if (measured > limit) {
    const mends = filling === 'full' ? waysToBalance(input, state.all) : { heavy: angleOf(state.all) };
    return [
      finding('balance.over', { subject, values: { which: 'whole', measured, limit, ...more, ...mends } }),
    ];
  }
  const [over] = faces
    .filter((one) => one.measured > one.limit)
    .sort((a, b) => b.measured / b.limit - a.measured / a.limit);
  if (!over) return [];
  const half = over.which === 'upper' ? 'upper' : 'lower';
  const values = { which: 'face', half, measured: over.measured, limit: over.limit, ...more } as const;
  return [finding('balance.over', { subject, values })];
}

/** What balances the heavy side: a mass at the rim, a swap that mends most of it, a dummy cavity opposite. */
function waysToBalance({ radius, swappable, placed, fittings }: BalanceInput, all: Unbalance) {
  const size = sizeOf(all);
  const heavy = angleOf(all);
  const swap = bestSwap(swappable, [...placed.map(({ excess }) => excess), ...fittings]);
  const reach = Math.max(...placed.map(({ excess }) => Math.hypot(excess.x, excess.y)));
  return {
    heavy,
    weight: size / radius,
    opposite: (heavy + 180) % 360,
    ...(swap && swap.size < 0.8 * size && { swap: swap.a, swapWith: swap.b, swapLeaves: swap.size }),
    ...(reach > 0 && { dummy: size / reach, dummyRadius: reach }),
  };
}
