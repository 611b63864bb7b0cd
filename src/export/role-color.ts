import { kindOfRole, type SolidRole } from '../kinds/index.ts';

/** The color of a role's kind as red, green, blue from 0 to 1. */
export const roleColor = (role: SolidRole): readonly [number, number, number] => {
  const { color } = kindOfRole(role);
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16) / 255);
  return [red, green, blue];
};
