import type { ReportPart } from '../../findings/index.ts';
import { type CureRate, equivalentTime, type Heating, slabTemperature } from '../../physics/index.ts';

/** Samples of the heating, and of the cooling: the fall is followed for this many time constants. */
const samples = 400;
const constants = 4;

const coolingS = ({ coolingConstantS }: Heating): number => constants * coolingConstantS;

/** Equivalent time at x when all is over, s. */
export function gathered(heating: Heating, rate: CureRate, x: number): { hot: number; all: number } {
  const hot = history(heating, rate, x, 0, heating.heatedS);
  const cooling = coolingS(heating);
  const cold = cooling > 0 ? history(heating, rate, x, heating.heatedS, cooling) : 0;
  return { hot, all: hot + cold };
}

function history(heating: Heating, rate: CureRate, x: number, from: number, span: number): number {
  const step = span / samples;
  const temperaturesC = Array.from({ length: samples + 1 }, (_, i) =>
    slabTemperature(heating, from + i * step, x),
  );
  return equivalentTime(rate, temperaturesC, step)[samples];
}

const week = 604_800;

/** Least time of heating, s, with which the middle gathers t90, cooling included; undefined where a week does not do. */
export function timeNeeded(heating: Heating, rate: CureRate, t90S: number): number | undefined {
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

/** Temperature in the middle and at the faces against time. */
export function temperatures(heating: Heating): NonNullable<ReportPart['series']> {
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

/** Cure gathered in the middle against time. */
export function cureSeries(heating: Heating, rate: CureRate): NonNullable<ReportPart['series']>[number] {
  const values = times(heating);
  const middle = values.map((time) => slabTemperature(heating, time, 0));
  return {
    name: 'cure.gathered',
    subject: 'cure',
    x: { label: 'time', unit: 's', values },
    y: {
      label: "cure in the middle, as time at the compound's reference temperature",
      unit: 's',
      values: equivalentTime(rate, middle, values[1]),
    },
  };
}
