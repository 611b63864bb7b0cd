import type { Section, Station } from '../mold.ts';

/** Points across a half-round section; odd, so that the deepest is one of them. */
const across = 9;

/** A point of a section: [offset across, depth under the surface], mm. */
export type SectionPoint = readonly [number, number];

type Size = Pick<Station, 'width' | 'depth'>;

/** How much narrower the floor is than the mouth on each side, mm: of a trapezoid at most a quarter of the mouth. */
function flankOf(section: Section, { width, depth }: Size): number {
  return section.kind === 'trapezoid' ? Math.min(depth * Math.tan(section.draftRad), width / 4) : width / 2;
}

/** A section from the right side of the path to its left; of one kind of section always as many points. */
export function sectionPoints(section: Section, size: Size): readonly SectionPoint[] {
  const { width, depth } = size;
  if (section.kind === 'V')
    return [
      [-width / 2, 0],
      [0, depth],
      [width / 2, 0],
    ];
  if (section.kind === 'trapezoid') {
    const flank = flankOf(section, size);
    return [
      [-width / 2, 0],
      [flank - width / 2, depth],
      [width / 2 - flank, depth],
      [width / 2, 0],
    ];
  }
  return Array.from({ length: across }, (_, i) => {
    const angle = Math.PI * (i / (across - 1));
    return [-Math.cos(angle) * (width / 2), Math.sin(angle) * depth] as const;
  });
}

/** Area across, mm2: half an ellipse, else a trapezoid or, without a floor, a triangle. */
export function sectionArea(section: Section, size: Size): number {
  if (section.kind === 'half-round') return (Math.PI / 4) * size.width * size.depth;
  return size.depth * (size.width - flankOf(section, size));
}

/** How deep under the surface the middle of the area lies: 4 d / 3 pi of half an ellipse, d (a + 2 b) / 3 (a + b) of a trapezoid. */
export function sectionMiddle(section: Section, size: Size): number {
  const { width, depth } = size;
  if (section.kind === 'half-round') return (4 * depth) / (3 * Math.PI);
  const floor = width - 2 * flankOf(section, size);
  return (depth * (width + 2 * floor)) / (3 * (width + floor));
}
