import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  makeFigure,
  type ReportPart,
} from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';
import { type CureRate, type Heating, slabTemperature } from '../../physics/index.ts';
import { leftOut } from '../from-mold/index.ts';
import { type CureInput, cureInput, heatOf } from './cure-heating.ts';
import { cureSeries, gathered, temperatures, timeNeeded } from './cure-history.ts';

const source =
  'conduction across a slab heated from both faces, exact series (Incropera, sec. 5.5; Cengel, ch. 4), under lids with film or contact over them; masters and can wall left out';
const arrhenius = `${source}; rate of cure by Arrhenius from the activation energy the plan gives`;

/**
 * Temperature through the halves while they are heated and cool in the can, and the cure that this gives at the slowest
 * place, the middle of the stack, and at the faces, in minutes at the compound's reference temperature.
 */
export const cureReached: Check = check<CureInput>({
  id: 'cure',
  title: 'Cure',
  follows: false,
  processes: ['rubber'],
  units: ({ disc, placements, bench }) => {
    if (!bench.cure && placements.length === 0) return [];
    return [{ subject: 'cure', about: [], input: cureInput(disc.lower + disc.upper, bench) }];
  },
  run: (input) => {
    const known = heatOf(input);
    if ('missing' in known) return { findings: [notChecked('heating', known.missing)] };
    const { heating } = known;
    const wrong = nonsense(input, heating);
    if (wrong.length > 0) return { findings: wrong };
    const { rate, t90S, missing } = compoundOf(input);
    const judged = rate && t90S ? judge(input, heating, rate, t90S, known.estimated) : { findings: [] };
    const notes = missing.length > 0 ? [notChecked('compound', missing)] : [];
    const hot = heating.heatedS;
    const figures = [
      known.figure('cure.middle', slabTemperature(heating, hot, 0), source),
      known.figure('cure.face', slabTemperature(heating, hot, 1), source),
    ];
    return {
      findings: [...notes, ...coolingNote(input), ...(judged.findings ?? [])],
      figures: [...figures, ...(judged.figures ?? [])],
      series: [...temperatures(heating), ...(judged.series ?? [])],
    };
  },
});

const notChecked = (
  which: 'heating' | 'compound' | 'cooling' | 'overcure',
  missing: readonly string[],
): Finding => finding('cure.not-checked', { subject: 'cure', values: { which, missing } });

function nonsense({ rubber }: CureInput, { startC, surroundingsC }: Heating): Finding[] {
  const subject = 'cure';
  const measured = surroundingsC;
  if (startC >= surroundingsC)
    return [finding('cure.not-heating', { subject, values: { measured, limit: startC } })];
  const { cureFromC: from, cureToC: to } = rubber ?? {};
  const bound = from !== undefined && surroundingsC < from ? from : to;
  if (bound === undefined || (bound === to && surroundingsC <= bound)) return [];
  const side = bound === to ? 'over' : 'under';
  return [finding('cure.out-of-range', { subject, values: { measured, limit: bound, side } })];
}

function compoundOf({ rubber }: CureInput): { rate?: CureRate; t90S?: number; missing: string[] } {
  const { t90S, referenceTemperatureC: referenceC, activationEnergyJMol } = rubber ?? {};
  const missing = leftOut([
    ['rubber.t90', t90S],
    ['rubber.referenceTemperature', referenceC],
    ['rubber.activationEnergy', activationEnergyJMol],
  ]);
  if (t90S === undefined || referenceC === undefined || activationEnergyJMol === undefined)
    return { missing };
  return { rate: { referenceC, activationEnergyJMol }, t90S, missing };
}

/** Cooling in the can goes on curing; unless the plan says that it does, and how fast, none of it is counted. */
function coolingNote({ cure }: CureInput): Finding[] {
  if (cure?.cooling === 'in the can' && cure.coolingConstantS === undefined)
    return [notChecked('cooling', ['cure.coolingConstant'])];
  return cure?.cooling === undefined && cure?.coolingConstantS !== undefined
    ? [notChecked('cooling', ['cure.cooling'])]
    : [];
}

function judge(
  { rubber }: CureInput,
  heating: Heating,
  rate: CureRate,
  t90S: number,
  estimated: boolean,
): ReportPart {
  const middle = gathered(heating, rate, 0);
  const face = gathered(heating, rate, 1);
  const needed = timeNeeded(heating, rate, t90S);
  const figure = (name: FigureName, value: number): Figure =>
    makeFigure(name, { subject: 'cure', value, source: arrhenius, estimated });
  const figures = [
    figure('cure.gatheredHot', middle.hot),
    figure('cure.gathered', middle.all),
    figure('cure.fromCooling', middle.all > 0 ? 1 - middle.hot / middle.all : 0),
    figure('cure.share', middle.all / t90S),
    figure('cure.gatheredFace', face.all),
    ...(needed === undefined ? [] : [figure('cure.needed', needed)]),
  ];
  const findings: Finding[] = [];
  const about = { subject: 'cure' };
  const { referenceC: reference } = rate;
  if (middle.all < t90S) {
    const values = { measured: middle.all, limit: t90S, reference, needed };
    findings.push(finding('cure.short', { ...about, values }));
  }
  const most = rubber?.overcureS;
  if (most === undefined) findings.push(notChecked('overcure', ['rubber.overcure']));
  else if (face.all > most)
    findings.push(finding('cure.over', { ...about, values: { measured: face.all, limit: most, reference } }));
  return { findings, figures, series: [cureSeries(heating, rate)] };
}
