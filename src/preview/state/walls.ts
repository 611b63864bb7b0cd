import { computed } from '@preact/signals';
import { type FigureName, figureCatalogue } from '../../findings/index.ts';
import { midpoint } from '../../geometry/index.ts';
import { findings, mold, report } from './store.ts';

type Place = readonly [number, number, number];

/** A wall as the report has it: how thick, and between which two places (mold frame, mm). */
export interface MeasuredWall {
  readonly subject: string;
  /** Between what and what. */
  readonly label: string;
  readonly thickness: number;
  readonly ends: readonly [Place, Place];
  readonly estimated: boolean;
  /** Whether a finding is about it. */
  readonly isThin: boolean;
}

const isWall = (name: FigureName): boolean => name.startsWith('walls.');

/** Every measured wall, thinnest first. */
export const measuredWalls = computed<readonly MeasuredWall[]>(() => {
  const thin = new Set(
    findings.value
      .filter(({ code }) => code.startsWith('walls.'))
      .map(({ subject, values: { measured } }) => `${subject} ${measured}`),
  );
  return (report.value?.figures ?? [])
    .flatMap(({ name, subject, value, places, estimated }) => {
      if (!isWall(name) || places?.length !== 2) return [];
      const [a, b] = places;
      const isThin = thin.has(`${subject.split(' ')[0]} ${value}`);
      return [
        {
          subject,
          label: figureCatalogue[name].label,
          thickness: value,
          ends: [a, b] as const,
          estimated,
          isThin,
        },
      ];
    })
    .sort((a, b) => a.thickness - b.thickness);
});

/** How many of the thinnest are drawn as dimension lines. */
export const dimensioned = 8;

/** How many times the wall wanted the color scale goes; anything more looks the same. */
export const scaleParts = 5;

/** Distance at the far end of the color scale, mm. */
export const scaleEnd = computed(() => scaleParts * (mold.value?.limits.wall ?? 3));

export const middleOf = ([a, b]: MeasuredWall['ends']): Place => midpoint(a, b);
