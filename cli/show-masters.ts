import type { MasterSize } from '../src/export/index.ts';
import type { UnitSystem } from '../src/findings/index.ts';
import { showQuantity, showSides } from '../src/wording/index.ts';
import { fitColumn, strong, table } from './terminal.ts';

/** Each master's final size, volume and the mass of one casting; on a narrow page in two lines. */
export function showMasters(sizes: readonly MasterSize[], units: UnitSystem, width: number): string {
  if (sizes.length === 0) return '';
  const rows = sizes.map(({ id, length, width, height, volume, massG, estimated }) => {
    const about = estimated ? '~' : '';
    return [
      `  ${id}`,
      `${about}${showSides([length, width, height], units)}`,
      `${about}${showQuantity(volume, 'mm3', units)}`,
      massG === undefined ? '' : `${massG.estimated ? '~' : ''}${showQuantity(massG.value, 'g', units)}`,
    ];
  });
  const mass = rows.some((row) => row[3] !== '') ? 'one casting' : '';
  const all = [['Masters', 'length x width x height', 'volume', mass], ...rows];
  const wide = table(all, [2, 3]);
  const fits = wide.split('\n').every((line) => line.length <= width);
  const folded = all.flatMap(([name, sides, volume, casting]) => [
    [name, sides, volume],
    ...(casting === '' ? [] : [['', '', casting]]),
  ]);
  const [first, ...others] = (fits ? wide : table(fitColumn(folded, 0, width), [2])).split('\n');
  return [strong(first), ...others].join('\n');
}
