import type { SolidRole } from '../kernel/index.ts';

/** sRGB of each role, so that pieces that belong together are seen at a glance. Our own choice. */
export const roleColors: Readonly<Record<SolidRole, string>> = {
  half: '#9AA58C',
  blank: '#B8B2A6',
  'sprue form': '#B0703C',
  plug: '#8C5A7A',
  boss: '#4F7A94',
  'boss cup': '#7FA3B5',
  'build-up': '#C9A227',
  tab: '#A8443A',
  notch: '#6B6B6B',
  'scaled master': '#D8C7A0',
  'pattern plate': '#5E8A6B',
  jig: '#7A6A9A',
  'layout plate': '#9A8F7A',
  nest: '#8C8F5A',
  'can part': '#6F7F8A',
  gauge: '#A06A6A',
  'left by the cutter': '#C2452D',
};

/** The same as red, green, blue from 0 to 1. */
export const roleColor = (role: SolidRole): readonly [number, number, number] => {
  const [red, green, blue] = [1, 3, 5].map(
    (at) => Number.parseInt(roleColors[role].slice(at, at + 2), 16) / 255,
  );
  return [red, green, blue];
};
