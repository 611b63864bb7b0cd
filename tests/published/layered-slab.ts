/** Layers from a face inward to the middle of a symmetric stack: thickness m, conductivity W/mK, heat capacity J/m3K. */
export interface Layer {
  readonly thickness: number;
  readonly conductivity: number;
  readonly capacity: number;
  readonly cells: number;
}

export interface Surroundings {
  readonly start: number;
  readonly around: (seconds: number) => number;
  readonly step: number;
  readonly steps: number;
}

/**
 * Temperature (C) of the innermost cell after each step, by finite volumes and implicit steps (backward Euler, solved
 * by Thomas's elimination): nothing of the program's is used. The surroundings are at `around(seconds)`, behind a contact (W/m2K).
 */
export function middleOfLayers(
  layers: readonly Layer[],
  contact: number,
  { start, around, step, steps }: Surroundings,
): number[] {
  const cells = layers.flatMap(({ cells: count, thickness, conductivity, capacity }) =>
    Array.from({ length: count }, () => ({
      heat: (capacity * thickness) / count / step,
      half: thickness / count / conductivity / 2,
    })),
  );
  const last = cells.length - 1;
  const outer = cells.map(({ half }, i) => 1 / (half + (i === 0 ? 1 / contact : cells[i - 1].half)));
  let now = cells.map(() => start);
  const middle = [start];
  for (let s = 0; s < steps; s++) {
    const [above, rest]: [number[], number[]] = [[], []];
    for (const [i, { heat }] of cells.entries()) {
      const inward = i < last ? outer[i + 1] : 0;
      const pivot = heat + outer[i] + inward - (i > 0 ? outer[i] * above[i - 1] : 0);
      above.push(inward / pivot);
      rest.push((heat * now[i] + outer[i] * (i === 0 ? around((s + 1) * step) : rest[i - 1])) / pivot);
    }
    const next = [...rest];
    for (let i = last - 1; i >= 0; i--) next[i] += above[i] * next[i + 1];
    now = next;
    middle.push(now[last]);
  }
  return middle;
}
