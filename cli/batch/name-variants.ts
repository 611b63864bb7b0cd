import { folderName } from '../folder-name.ts';
import type { Variant } from './variant.ts';

/** A variant before it has its folder: the name given for it, if any. */
export type Unnamed = Omit<Variant, 'name'> & { readonly name?: string };

/**
 * Gives each its folder's name: the one it was given, or one made of what is set. Where two would come out alike, the
 * later one gets a number, so that the names are those of the whole list whichever part of it is built.
 */
export function nameVariants(variants: readonly Unnamed[]): Variant[] {
  const wanted = variants.map((one) => folderName(one.name ?? ownName(one)));
  const taken = new Set(wanted);
  const seen = new Set<string>();
  return variants.map((one, i) => {
    let name = wanted[i];
    if (seen.has(name)) {
      let number = 2;
      while (taken.has(`${name}-${number}`)) number++;
      name = `${name}-${number}`;
      taken.add(name);
    }
    seen.add(name);
    return { ...one, ...(one.name !== undefined && { given: one.name }), name };
  });
}

const ownName = ({ settings, row }: Unnamed): string => {
  if (settings.length === 0) return row === undefined ? 'as planned' : `row ${row}`;
  return settings.map(({ path, value }) => `${path} ${value}`).join(' ');
};
