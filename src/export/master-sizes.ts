import type { Report } from '../findings/index.ts';
import { lieOf, type Mold, sizeAsItLies } from '../mold/index.ts';
import type { Plan } from '../plan/index.ts';

/** A master at its final size, that of the casting, before shrink is added: mm and mm3. */
export interface MasterSize {
  readonly id: string;
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly volume: number;
  /** Of one casting, where it is placed and the plan says what is poured. */
  readonly massG?: { readonly value: number; readonly estimated: boolean };
  readonly estimated: boolean;
}

/** Each master's final size as it lies, volume and the mass of one casting. */
export const masterSizes = (plan: Plan, mold: Mold, report: Report): MasterSize[] =>
  mold.masters.map(({ id, mesh, measures, estimated }) => {
    const spec = plan.masters?.[id];
    if (!spec) throw new Error(`the mold has a master ${id} that its plan has not`);
    const placed = mold.placements.find(({ master }) => master === id);
    const mass = report.figures.find(
      ({ name, subject }) => name === 'shot.casting' && subject === placed?.id,
    );
    return {
      id,
      ...sizeAsItLies(mesh.positions, lieOf(spec)),
      volume: measures.volume,
      ...(mass && { massG: { value: mass.value, estimated: mass.estimated } }),
      estimated,
    };
  });
