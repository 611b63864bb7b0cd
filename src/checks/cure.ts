import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  makeFigure,
  type ReportPart,
} from '../findings/index.ts';
import { type Check, type Mold, work } from '../mold/index.ts';
import {
  type CureRate,
  equivalentTime,
  fixedFaces,
  type Heating,
  type SlabFaces,
  slabModes,
  slabTemperature,
} from '../physics/index.ts';
import { lidMetal, rubberKind } from '../tables/index.ts';
import { leftOut, notChecked } from './not-given.ts';

type Bench = Mold['bench'];

interface CureInput {
  /** Both halves together, mm. */
  readonly thickness: number;
  readonly cure: Omit<NonNullable<Bench['cure']>, 'at'> | null;
  readonly rubber: Omit<NonNullable<Bench['rubber']>, 'at'> | null;
  readonly lid: { readonly material?: string; readonly thickness?: number };
}

const source =
  'conduction across a slab heated from both faces, exact series (Incropera, sec. 5.5; Cengel, ch. 4); masters and can wall left out';
const arrhenius = `${source}; rate of cure by Arrhenius from the activation energy the plan gives`;

/**
 * Temperature through the halves while they are heated and cool in the can, and the cure that this gives at the slowest
 * place, the middle of the stack, and at the faces, in minutes at the compound's reference temperature.
 */
export const cureReached: Check = work<CureInput, ReportPart>({
  id: 'cure',
  title: 'Cure',
  scope: 'whole',
  processes: ['rubber'],
  jobs: ({ disc, placements, bench }) => {
    if (!bench.cure && placements.length === 0) return [];
    return [{ subject: 'cure', input: inputOf(disc.lower + disc.upper, bench) }];
  },
  run: (input) => {
    const known = heatOf(input);
    if ('missing' in known) return { findings: [not('Cure is', known.missing)] };
    const { heating } = known;
    const wrong = nonsense(input, heating);
    if (wrong.length > 0) return { findings: wrong };
    const { rate, t90S, missing } = compoundOf(input);
    const judged = rate && t90S ? judge(input, heating, rate, t90S, known.estimated) : { findings: [] };
    const notes = missing.length > 0 ? [not('How far the cure goes is', missing)] : [];
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

const not = (what: string, missing: readonly string[]): Finding =>
  notChecked('cure.not-checked', 'cure', what, missing);

function inputOf(thickness: number, { cure, rubber, closing, can }: Bench): CureInput {
  const strip = <T extends { at: unknown }>(given: T | undefined): Omit<T, 'at'> | null => {
    if (!given) return null;
    const { at: _, ...rest } = given;
    return rest;
  };
  const lid = closing?.lid?.thickness ?? can?.lid;
  return {
    thickness,
    cure: strip(cure),
    rubber: strip(rubber),
    lid: {
      ...(closing?.lid?.material !== undefined && { material: closing.lid.material }),
      ...(lid !== undefined && { thickness: lid }),
    },
  };
}

interface Known {
  readonly heating: Heating;
  readonly estimated: boolean;
  figure(name: FigureName, value: number, source: string): Figure;
}

/** How the stack is heated, or what the plan leaves out for that. */
function heatOf({ thickness, cure, rubber, lid }: CureInput): Known | { missing: string[] } {
  const kind = rubber?.compound === undefined ? undefined : rubberKind(rubber.compound);
  const diffusivity = rubber?.diffusivityM2S ?? kind?.diffusivityM2S?.value;
  const conductivity = rubber?.conductivityWMK ?? kind?.conductivityWMK?.value;
  const metal = lid.material === undefined ? undefined : lidMetal(lid.material);
  const oven = cure?.heating === 'oven';
  const missing = leftOut([
    ['cure.temperature', cure?.temperatureC],
    ['cure.time', cure?.timeS],
    ['cure.heating', cure?.heating],
    ['cure.start', cure?.startC],
    ['rubber.diffusivity', diffusivity],
    ['rubber.conductivity', oven ? conductivity : 0],
    ['cure.film', oven ? cure?.filmWM2K : 0],
    ['closing.lid.thickness', oven ? lid.thickness : 0],
    ['closing.lid.material', oven ? metal : 0],
  ]);
  if (
    missing.length > 0 ||
    cure?.temperatureC === undefined ||
    cure.timeS === undefined ||
    cure.startC === undefined ||
    diffusivity === undefined
  )
    return { missing };
  const half = thickness / 2000;
  const faces =
    oven && conductivity && metal && lid.thickness && cure.filmWM2K
      ? ovenFaces(
          half,
          { diffusivity, conductivity, film: cure.filmWM2K },
          { ...metal, thickness: lid.thickness },
        )
      : fixedFaces;
  const fromTable = rubber?.diffusivityM2S === undefined ? kind?.diffusivityM2S?.source.kind : undefined;
  const estimated = oven || fromTable === 'memory';
  return {
    heating: {
      modes: slabModes(faces),
      perSecond: diffusivity / half ** 2,
      startC: cure.startC,
      surroundingsC: cure.temperatureC,
      heatedS: cure.timeS,
      coolingConstantS: cure.coolingConstantS ?? 0,
    },
    estimated,
    figure: (name, value, from) => makeFigure(name, { subject: 'cure', value, source: from, estimated }),
  };
}

/** Biot number of the film, and the heat capacity of one lid over that of half the stack. Lengths in m but the lid's. */
function ovenFaces(
  half: number,
  { diffusivity, conductivity, film }: { diffusivity: number; conductivity: number; film: number },
  lid: { densityKgM3: number; heatJKgK: number; thickness: number },
): SlabFaces {
  const lidCapacity = (lid.densityKgM3 * lid.heatJKgK * lid.thickness) / 1000;
  return {
    biot: (film * half) / conductivity,
    lumped: lidCapacity / ((conductivity / diffusivity) * half),
  };
}

function nonsense({ rubber }: CureInput, { startC, surroundingsC }: Heating): Finding[] {
  const at = { value: surroundingsC, unit: 'C' } as const;
  if (startC >= surroundingsC)
    return [
      finding('cure.not-heating', {
        subject: 'cure',
        measured: at,
        limit: { value: startC, unit: 'C' },
        says: `The can starts at ${celsius(startC)} and is put to ${celsius(surroundingsC)}: that heats nothing.`,
      }),
    ];
  const { cureFromC: from, cureToC: to } = rubber ?? {};
  const bound = from !== undefined && surroundingsC < from ? from : to;
  if (bound === undefined || (bound === to && surroundingsC <= bound)) return [];
  const side = bound === to ? 'over' : 'under';
  return [
    finding('cure.out-of-range', {
      subject: 'cure',
      measured: at,
      limit: { value: bound, unit: 'C' },
      says: `${celsius(surroundingsC)} is ${side} the ${celsius(bound)} that the maker of the compound gives.`,
    }),
  ];
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

/** Cooling in the can goes on curing; without its time constant none of it is counted. */
const coolingNote = ({ cure }: CureInput): Finding[] =>
  cure?.cooling === 'in the can' && cure.coolingConstantS === undefined
    ? [not('Cooling in the can is not counted toward the cure, and', ['cure.coolingConstant'])]
    : [];

/** Samples of the heating, and of the cooling: the fall is followed for this many time constants. */
const samples = 400;
const constants = 4;

const coolingS = ({ coolingConstantS }: Heating): number => constants * coolingConstantS;

/** Equivalent time at x when all is over, s. */
function gathered(heating: Heating, rate: CureRate, x: number): { hot: number; all: number } {
  const hot = history(heating, rate, x, 0, heating.heatedS);
  const cooling = coolingS(heating);
  const cold = cooling > 0 ? history(heating, rate, x, heating.heatedS, cooling) : 0;
  return { hot, all: hot + cold };
}

function history(heating: Heating, rate: CureRate, x: number, from: number, span: number): number {
  const step = span / samples;
  const celsiusAt = Array.from({ length: samples + 1 }, (_, i) =>
    slabTemperature(heating, from + i * step, x),
  );
  return equivalentTime(rate, celsiusAt, step)[samples];
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
    figure('cure.share', middle.all / t90S),
    figure('cure.gatheredFace', face.all),
    ...(needed === undefined ? [] : [figure('cure.needed', needed)]),
  ];
  const findings: Finding[] = [];
  if (middle.all < t90S) findings.push(short(middle.all, t90S, rate, needed));
  const most = rubber?.overcureS;
  if (most !== undefined && face.all > most)
    findings.push(
      finding('cure.over', {
        subject: 'cure',
        measured: { value: face.all, unit: 's' },
        limit: { value: most, unit: 's' },
        says: `The faces gather ${minutes(face.all)} at ${celsius(rate.referenceC)}; the compound stands ${minutes(most)}.`,
      }),
    );
  return { findings, figures, series: [cureSeries(heating, rate)] };
}

function short(reached: number, t90S: number, { referenceC }: CureRate, needed: number | undefined): Finding {
  const remedy =
    needed === undefined
      ? `At this temperature a week would not do: heat the can hotter.`
      : `Heat it for ${minutes(needed)}, or hotter within the range of the compound.`;
  return finding('cure.short', {
    subject: 'cure',
    measured: { value: reached, unit: 's' },
    limit: { value: t90S, unit: 's' },
    says: `The middle gathers ${minutes(reached)} at ${celsius(referenceC)}, of the ${minutes(t90S)} to 90 % cure.`,
    remedy,
  });
}

const week = 604_800;

/** Least time of heating, s, with which the middle gathers t90, cooling included; undefined where a week does not do. */
function timeNeeded(heating: Heating, rate: CureRate, t90S: number): number | undefined {
  const does = (heatedS: number): boolean => gathered({ ...heating, heatedS }, rate, 0).all >= t90S;
  let high = 60;
  while (!does(high)) {
    high *= 2;
    if (high > week) return undefined;
  }
  let low = 0;
  // To a second.
  while (high - low > 1) {
    const between = (low + high) / 2;
    if (does(between)) high = between;
    else low = between;
  }
  return high;
}

/** Times the curves are drawn at, s: over the heating, and the cooling where it counts. */
function times(heating: Heating): number[] {
  const end = heating.heatedS + coolingS(heating);
  return Array.from({ length: 241 }, (_, i) => (i / 240) * end);
}

function temperatures(heating: Heating): NonNullable<ReportPart['series']> {
  const x = { label: 'time', unit: 's' as const, values: times(heating) };
  const curve = (name: string, label: string, place: number) => ({
    name,
    subject: 'cure',
    x,
    y: { label, unit: 'C' as const, values: x.values.map((time) => slabTemperature(heating, time, place)) },
  });
  return [
    curve('cure.middleTemperature', 'temperature in the middle', 0),
    curve('cure.faceTemperature', 'temperature of the faces', 1),
  ];
}

function cureSeries(heating: Heating, rate: CureRate): NonNullable<ReportPart['series']>[number] {
  const values = times(heating);
  const middle = values.map((time) => slabTemperature(heating, time, 0));
  return {
    name: 'cure.gathered',
    subject: 'cure',
    x: { label: 'time', unit: 's', values },
    y: {
      label: `cure in the middle, as time at ${celsius(rate.referenceC)}`,
      unit: 's',
      values: equivalentTime(rate, middle, values[1]),
    },
  };
}

const minutes = (seconds: number): string => `${(seconds / 60).toFixed(1)} min`;
const celsius = (value: number): string => `${value.toFixed(0)} C`;
