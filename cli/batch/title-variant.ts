import type { UnitSystem } from '../../src/findings/index.ts';
import { mmPerInch } from '../../src/geometry/index.ts';
import type { Plan, Setting } from '../../src/plan/index.ts';
import { fixed } from '../../src/wording/index.ts';
import type { Variant } from './variant.ts';

/**
 * The plan with the variant's name and size behind its title and its label, so that no two of a batch are lettered
 * alike. What the variant itself sets stays as it says.
 */
export function titleVariant(plan: Plan, { given, settings }: Variant, units: UnitSystem): Plan {
  const words = given ?? settings.map(settingText).filter(Boolean).join(', ');
  const added = [words, diameterIn(plan.disc.diameter, units)].filter(Boolean);
  const extend = (path: string, text: string | undefined): string =>
    settings.some((one) => one.path === path) && text !== undefined
      ? text
      : [...(text === undefined ? [] : [text]), ...added].join(', ');
  const { title, disc } = plan;
  const label = disc.label === undefined ? {} : { label: extend('disc.label', disc.label) };
  return { ...plan, title: extend('title', title), disc: { ...disc, ...label } };
}

/** Such as `hole 28`; the disc's diameter is told as its size. */
const settingText = ({ path, value }: Setting): string =>
  path === 'disc.diameter' || path === 'title' ? '' : `${path.split('.').at(-1)} ${value}`;

/** `9 in`, `230 mm`: no more decimals than it has. */
const diameterIn = (mm: number, units: UnitSystem): string =>
  units === 'inch' ? `${Number(fixed(mm / mmPerInch, 3))} in` : `${Number(fixed(mm, 1))} mm`;
