import type { UnitSystem } from '../../findings/index.ts';
import { type Outline, type Path, type Point2, polygon } from '../../geometry/index.ts';
import { depthText, lettersOf } from '../../lettering/index.ts';
import { type Mold, type Part, task } from '../../mold/index.ts';
import { type FlatFixture, flatFixture } from '../making/index.ts';
import {
  engravedPlate,
  type FindTitlePlace,
  layOutTitle,
  type PlanNames,
  planWords,
} from '../plate/index.ts';

const id = 'depth-gauge';
/** Millimeters; common practice. */
const gauge = { tooth: 6, gap: 8, back: 14, thickness: 3 } as const;
const letterHeight = 3;
/** Foot of the numbers, and of what is over them. */
const numbersAt = 1.5;
const overNumbers = numbersAt + letterHeight + 1;
/** Depths closer than a step are one tooth. */
const stepsPerMm = 10;
const step = 1 / stepsPerMm;

interface GaugeInput extends PlanNames {
  readonly depths: readonly { readonly depth: number; readonly ids: readonly string[] }[];
  readonly fixture: FlatFixture;
  readonly units: UnitSystem;
  readonly estimated: boolean;
}

/**
 * A stepped comb: each tooth is as long as a master of this plan reaches below the parting plane. Its back laid on the
 * half, the tooth just touches the bottom of the pocket. Depths are rounded to 0.1 mm.
 */
export const depthGauge: Part = task({
  id,
  title: 'depth gauge',
  processes: ['rubber', 'rigid', 'poured'],
  units: (mold) => {
    const input = inputFor(mold);
    return input.depths.length > 0 ? [{ subject: id, about: [], input }] : [];
  },
  run: ({ depths, fixture, units, estimated, ...names }, { kernel }) => {
    const outline = combOutline(depths.map(({ depth }) => depth));
    const title = 'depth gauge';
    const label = layOutTitle({ id, title }, planWords(names), spotOver(depths.length));
    const { lettered, findings } = label;
    const engraved = [
      ...depths.flatMap(({ depth }, i) => numberOf(depthText(depth, units), i)),
      ...label.engraved,
    ];
    const subjects = depths.flatMap(({ ids }) => ids);
    const { thickness } = gauge;
    const naming = { id, title, role: 'gauge', subjects, lettered, estimated } as const;
    const { solid, drawing } = kernel.scope((scope) =>
      engravedPlate(scope, { outline, thickness, engraved }, fixture, naming),
    );
    return { solids: [solid], drawings: [drawing], findings };
  },
});

function inputFor({ disc, revision, placements, fixture, units }: Mold): GaugeInput {
  const byDepth = new Map<number, string[]>();
  for (const { id: placement, lowest } of placements) {
    const steps = Math.round(-lowest / step);
    if (steps > 0) byDepth.set(steps, [...(byDepth.get(steps) ?? []), placement]);
  }
  const depths = [...byDepth]
    .sort(([a], [b]) => a - b)
    .map(([steps, ids]) => ({ depth: steps / stepsPerMm, ids }));
  const names = { label: disc.label, revision };
  return {
    ...names,
    depths,
    units,
    fixture: flatFixture(fixture),
    estimated: placements.some((one) => one.estimated),
  };
}

const toothAt = (i: number): number => gauge.gap + i * (gauge.tooth + gauge.gap);

/** The back from y = 0 up, teeth hanging from it. Area = back x length + tooth x sum of depths. */
function combOutline(depths: readonly number[]): Outline {
  const length = toothAt(depths.length);
  const teeth = depths.flatMap((depth, i): Point2[] => {
    const x = toothAt(i);
    return [
      [x, 0],
      [x, -depth],
      [x + gauge.tooth, -depth],
      [x + gauge.tooth, 0],
    ];
  });
  return [polygon([[0, 0], ...teeth, [length, 0], [length, gauge.back], [0, gauge.back]])];
}

/** Over the numbers. */
const spotOver =
  (count: number): FindTitlePlace =>
  (width, height) =>
    width <= toothAt(count) && overNumbers + height <= gauge.back
      ? { at: [toothAt(count) / 2, (overNumbers + gauge.back) / 2], turnRad: 0 }
      : undefined;

const numberOf = (words: string, i: number): Path[] =>
  lettersOf({
    words,
    at: [toothAt(i) + gauge.tooth / 2, numbersAt],
    height: letterHeight,
    turnRad: 0,
    anchor: 'middle',
  });
